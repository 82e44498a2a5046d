import { beforeEach, expect, it } from 'vitest';
import { proposalPart } from '#client/plan/draw/drawPencil.ts';
import { drawProposal } from '#client/plan/draw/drawProposal.ts';
import { takenOnFloor } from '#client/plan/draw/takenOnFloor.ts';
import { boxOfWords } from '#client/plan/draw/wordPlace.ts';
import { drawLayer } from '#client/plan/layers.ts';
import { createPlanModel, type PlanModel } from '#client/plan/planModel.ts';
import type { Edit } from '#model/findings/edit.ts';
import { canvas } from './canvas.ts';
import { planSession } from './planSession.ts';

/** px a mm */
const K = 0.1;
let model: PlanModel;

// A shelf stands 0.30 m before a table with chairs on two sides, and another behind it.
beforeEach(() => {
  const session = planSession({
    pieces: [
      { id: 't1', kind: 'table', x: 3000, y: 2000, width: 1200, depth: 600, seatSides: { front: 2, back: 2 } },
      { id: 's1', kind: 'shelf', x: 3000, y: 3000, width: 1400, depth: 320 },
      { id: 's2', kind: 'shelf', x: 3000, y: 900, width: 1400, depth: 320 },
    ],
  });
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  model.view = { k: K, x: 0, y: 0 };
  proposalPart.draw = drawProposal;
});

const move = (piece: string, x: number, y: number): Edit => ({ do: 'move-piece', piece, x, y });

function drawn(edits: readonly Edit[]) {
  const written: { text: string; x: number; y: number }[] = [];
  const lines: { x: number; y: number }[] = [];
  const note = (x: number, y: number) => lines.push({ x, y });
  let from = { x: 0, y: 0 };
  const ctx = canvas({
    translate: (x: number, y: number) => {
      from = { x, y };
    },
    fillText: (text: string) => written.push({ text, ...from }),
    moveTo: note,
    lineTo: note,
  });
  const pen = { ctx, view: model.view, units: 'metric', isRightToLeft: false } as const;
  drawProposal(pen, model, edits);
  return { written, lines, taken: takenOnFloor(pen, model) };
}

it('the length of a move stands where it covers nothing, near its arrow', () => {
  const { written, taken } = drawn([move('t1', 3000, 2111), move('s1', 3000, 2795)]);
  expect(written.map(({ text }) => text)).toEqual(['T1: 0.111 m', '1: 0.205 m']);
  // With the ground behind the words.
  const boxes = written.map(({ text, x, y }) => boxOfWords({ where: { x, y }, align: 'center' }, text.length * 6 + 6, 13.5));
  for (const box of boxes)
    expect(taken.filter((other) => box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1)).toEqual([]);
  const [table, shelf] = boxes;
  expect(table && shelf && (table.y1 <= shelf.y0 || shelf.y1 <= table.y0 || table.x1 <= shelf.x0 || shelf.x1 <= table.x0)).toBe(true);
  // No farther than the shelf is wide.
  for (const { x, y } of written) expect(Math.hypot(x - 300, y - 250)).toBeLessThan(140);
});

it('an arrow begins at the side that goes ahead, so that it crosses neither number nor chairs', () => {
  const { lines } = drawn([move('t1', 3000, 2111)]);
  // The outline of where it would stand, and below the chairs of the front the arrow: 11 px.
  const arrow = lines.slice(4, 6);
  expect(arrow.map(({ x }) => x)).toEqual([300, 300]);
  expect((arrow[1]?.y ?? 0) - (arrow[0]?.y ?? 0)).toBeCloseTo(11.1, 6);
  expect(arrow[0]?.y).toBeGreaterThan(230);
});

it('waits on the plan for the part that tells it', () => {
  const wordsOver = (): string[] => {
    const written: string[] = [];
    drawLayer('over', canvas({ fillText: (text: string) => written.push(text) }), model);
    return written;
  };
  model.store.set({ proposal: [move('s1', 3000, 2795)] });
  expect(wordsOver()).toContain('0.205 m');
  delete proposalPart.draw;
  expect(wordsOver()).not.toContain('0.205 m');
});

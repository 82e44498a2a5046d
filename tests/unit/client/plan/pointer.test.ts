import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createPlanModel, fitWholeRoom, type PlanModel } from '#client/plan/planModel.ts';
import { createPlanPointer, type PlanPointer, type Press } from '#client/plan/pointer.ts';
import { toScreen } from '#client/plan/viewport.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;
let pointer: PlanPointer;
const press = (at: { x: number; y: number }): Press => ({ id: 1, at, isTouch: false, isFree: false, isPan: false });

beforeEach(() => {
  vi.stubGlobal('requestAnimationFrame', () => 1);
  session = planSession();
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  fitWholeRoom(model);
  pointer = createPlanPointer(model);
});

afterEach(() => vi.unstubAllGlobals());

it('the drawing keeps its place under every tool: what is pressed is meant where the paper lay', () => {
  const { view } = model;
  for (const kind of ['several', 'tape', 'remark'] as const) {
    model.store.set({ tool: { kind } });
    pointer.down(press(toScreen(view, { x: 3000, y: 2500 })));
    pointer.up(press(toScreen(view, { x: 3000, y: 2500 })));
    expect(model.view, kind).toBe(view);
  }
  expect(model.store.state().remarkAt?.at.x).toBeCloseTo(3000, 6);
  expect(model.store.state().remarkAt?.at.y).toBeCloseTo(2500, 6);
});

it('a press on the number of a remark reads it, and one beside it does not', () => {
  session.commands.addRemark({ text: 'Is this the quiet corner?', on: null, x: 2000, y: 2000, by: 'MK' });
  session.commands.addRemark({ text: 'Done long ago', on: null, x: 4000, y: 3000, by: '', done: true });
  const box = ({ x, y }: { x: number; y: number }) => ({
    x: toScreen(model.view, { x, y }).x + 15,
    y: toScreen(model.view, { x, y }).y - 11,
  });
  const tap = (at: { x: number; y: number }): void => {
    pointer.down(press(at));
    pointer.up(press(at));
  };
  tap(box({ x: 2000, y: 2000 }));
  expect(session.said.at(-1)).toBe('Remark 1, by MK: “Is this the quiet corner?”.');
  tap(box({ x: 4000, y: 3000 }));
  expect(session.said.at(-1)).toBe('Remark 2: “Done long ago”, done.');
  const count = session.said.length;
  tap(toScreen(model.view, { x: 2000, y: 3500 }));
  expect(session.said.slice(count).filter((said) => said.startsWith('Remark'))).toEqual([]);
});

it('what was said of a thing goes when it is taken up and moved, and how it came to rest is said once', () => {
  session.commands.addPiece('a1', { kind: 'table', x: 2000, y: 2000, width: 1200, depth: 600 });
  const from = toScreen(model.view, { x: 2000, y: 2000 });
  const to = (mm: number): Press => press(toScreen(model.view, { x: 2000, y: 2000 + mm }));
  pointer.down(press(from));
  pointer.up(press(from));
  expect(session.said.at(-1)).toMatch(/^Table/);
  const before = session.said.length;
  let frame = (): void => {};
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => {
    frame = run;
    return 1;
  });
  pointer.down(press(from));
  for (const mm of [200, 300, 400]) {
    pointer.move(to(mm));
    frame();
  }
  expect(pointer.isDragging()).toBe(true);
  expect(session.said.slice(before)).toEqual(['']);
  pointer.up(to(400));
  expect(session.said.slice(before)).toEqual(['', expect.stringMatching(/^Table/)]);
});

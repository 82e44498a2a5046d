import { expect, it } from 'vitest';
import { moveFigures } from '#model/analysis/moveDay/figures.ts';
import { analyse } from '#model/analysis/report.ts';
import type { Classroom } from '#model/schema/types.ts';
import { demoRoom } from '#tests/support/demo/demoRoom.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const demo: Classroom = plainRoom(demoRoom() as Parameters<typeof plainRoom>[0]);
const known = new Map<string, ReturnType<typeof moveFigures>>();
/** Of the demo, worked out once. */
function figuresOf(arrangement: string): ReturnType<typeof moveFigures> {
  const figures = known.get(arrangement) ?? moveFigures(demo, arrangement);
  known.set(arrangement, figures);
  return figures;
}

it.each(['a1', 'a2'])('says of %s of the demo what the checks say', (arrangement) => {
  const figures = figuresOf(arrangement);
  const { findings, measures } = analyse(demo, { arrangement });
  expect(figures.narrow).toBe(findings.filter(({ rule, severity }) => rule === 'way/narrow' && severity !== 'note').length);
  expect(figures.mats).toEqual(measures.mats);
  expect(figures.work).toBe((measures.places as { byWork: number }).byWork);
  expect(figures.hidden).toBeCloseTo((measures.sight as { hiddenArea: number }).hiddenArea, 3);
  const moves = (measures.order as { moves: unknown[] }[]).reduce((sum, strand) => sum + strand.moves.length, 0);
  expect(figures.outOfStep).toBe(moves);
  expect(figures.tooHigh === 0).toBe(!findings.some(({ rule, outcome }) => rule === 'reach/take' && outcome === 'problem'));
});

it('the open middle of the demo is the better room', () => {
  const [before, after] = [figuresOf('a1'), figuresOf('a2')];
  expect(before.narrow ?? 0).toBeGreaterThan(after.narrow ?? 0);
  expect(before.tooHigh).toBe(4);
  expect(after.tooHigh).toBe(0);
  expect(after.outOfStep).toBe(0);
});

it('what cannot be told is not told', () => {
  const corners = [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: 6000, y: 5000 },
    { id: 'c3', x: 6000, y: 0 },
    { id: 'c4', x: 0, y: 5000 },
  ];
  const shelf = { id: 's1', kind: 'shelf', x: 900, y: 2000, width: 1000, depth: 400 } as const;
  const figures = moveFigures(plainRoom({ children: { groups: [] }, room: { corners, openings: [] }, pieces: [shelf] }), 'a1');
  expect(figures).toMatchObject({ narrow: null, mats: null, work: null, tooHigh: null, hidden: null });
});

import { expect, it } from 'vitest';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { MeasureDesk } from '#model/measures/measures.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

/** The second of two steps stands first. Invented. */
const room = plainRoom({
  pieces: [shelf('a'), shelf('b', { x: 4000 })],
  materials: [tray('m1', { strand: 's', step: 2, area: 'sensorial' }), tray('m2', { strand: 's', step: 1, area: 'sensorial' })],
  placements: placed({ 'a-1': ['m1', 'm2'] }),
});
const [arrangement] = room.arrangements;
const moved = (piece: string, x: number, y: number): Classroom =>
  applyEdits(room, arrangement?.id ?? '', [{ do: 'move-piece', piece, x, y, rotation: 15 }]);
const pieceOf = (id: string) => arrangement?.pieces.find((piece) => piece.id === id);

function orderAfter(next: Classroom) {
  const desk = new MeasureDesk(buildScene(room));
  const before = desk.measures.order();
  expect(before.troubles).toHaveLength(1);
  desk.moveTo(buildScene(next, null, desk.scene), {});
  return { before, after: desk.measures.order() };
}

it('where a shelf stands is nothing to the order of what stands on it', () => {
  const { x = 0, y = 0 } = pieceOf('a') ?? {};
  const { before, after } = orderAfter(moved('a', x + 30, y + 10));
  expect(after).toBe(before);
});

it.each<[string, Classroom]>([
  ['a tray was moved', applyEdits(room, arrangement?.id ?? '', [{ do: 'put-away', material: 'm1' }])],
  ['a shelf was named', applyEdits(room, arrangement?.id ?? '', [{ do: 'change-piece', piece: 'a', set: { name: 'Sensorial' } }])],
  ['a shelf is the adults’ now', applyEdits(room, arrangement?.id ?? '', [{ do: 'change-piece', piece: 'a', set: { for: 'adults' } }])],
  ['the children grew', { ...room, children: { ...room.children, percentile: 50 } }],
  ['trays are kept farther apart', { ...room, options: { 'order/crowded': { trayGap: 90 } } }],
  ['it is read from the right', { ...room, display: { ...room.display, readingDirection: 'rtl' } }],
  ['materials changed', { ...room, materials: room.materials.map((m) => ({ ...m })) }],
])('it is reckoned anew when %s', (_, next) => {
  const { before, after } = orderAfter(next);
  expect(after).not.toBe(before);
});

it('a shelf that is dragged past another changes what is met first, and is told as from the start', () => {
  const running = new RunningAnalysis();
  const { y = 0 } = pieceOf('a') ?? {};
  for (let x = 1000; x <= 6000; x += 250) {
    const next = moved('a', x, y);
    expect(running.analyse(next, { tiers: ['live'] })).toEqual(new RunningAnalysis().analyse(next, { tiers: ['live'] }));
  }
});

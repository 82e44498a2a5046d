import { describe, expect, it } from 'vitest';
import { type IsFine, mendBoard } from '#model/findings/trayMends.ts';
import { buildScene } from '#model/scene/build.ts';
import type { SceneBoard, SceneSide } from '#model/scene/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

type Level = { id: string; surface: number; clear?: number };
const levels: Level[] = [
  { id: 'l1', surface: 900 },
  { id: 'l2', surface: 700 },
];
const thing = (id: string, height: number | null = 100) => ({ id, name: id, width: 200, depth: 200, height });
const on = (material: string, level: string | null, x = 0, y = 0) => ({ material, piece: 's1', level, x, y });

/** The mend of the things on the top board that lie above `limit`. */
function mend(change: PlainRoomChange & { levels?: Level[]; height?: number | null; sides?: ('front' | 'back')[] }, isFine: IsFine) {
  const { levels: own = levels, height = 1000, sides = ['front'], ...rest } = change;
  const classroom = plainRoom({
    pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 2000, width: 1000, depth: 400, height, levels: own, sides }],
    ...rest,
  });
  const scene = buildScene(classroom);
  const side = scene.sides.find((s) => s.side === 'front') as SceneSide;
  const board = side.boards.find((b) => b.level?.id === 'l1') as SceneBoard;
  const { surface, clear } = board;
  if (surface === null) throw new Error('no surface');
  const wrong = board.trays.filter((tray) => !isFine(tray, { side, board, surface, clear, x: tray.placement.x, y: tray.placement.y }));
  return mendBoard(scene, side, board, wrong, isFine);
}
const below =
  (limit: number): IsFine =>
  (_, spot) =>
    spot.surface <= limit;
const nearerThan =
  (limit: number): IsFine =>
  (_, spot) =>
    spot.y < limit;

describe('mending a board', () => {
  it('pulls forward what stands too far back', () => {
    const fix = mend({ materials: [thing('a')], placements: [on('a', 'l1', 50, 120)] }, nearerThan(100));
    expect(fix).toMatchObject({ label: 'Do it: a to the front edge', edits: [{ do: 'place', placement: { material: 'a', x: 50, y: 0 } }] });
  });
  it('but not onto what stands before it', () => {
    const small = { ...thing('b'), depth: 60 };
    expect(
      mend(
        { levels: [{ id: 'l1', surface: 900 }], materials: [thing('a'), small], placements: [on('a', 'l1', 50, 120), on('b', 'l1', 100)] },
        (tray, spot) => tray.material.id === 'b' || spot.y < 100,
      ),
    ).toBeNull();
  });
  it('lowers a board by whole centimetres, no further than needed', () => {
    const fix = mend({ materials: [thing('a')], placements: [on('a', 'l1')] }, below(857));
    expect(fix).toEqual({
      label: 'Do it: the board of a down to 0.85 m',
      edits: [{ do: 'change-level', piece: 's1', level: 'l1', set: { surface: 850 } }],
    });
  });
  it('lets the clear height below follow where it was typed', () => {
    const typed = [
      { id: 'l1', surface: 900 },
      { id: 'l2', surface: 600, clear: 270 },
    ];
    const fix = mend({ levels: typed, materials: [thing('a')], placements: [on('a', 'l1')] }, below(850));
    expect(fix?.edits).toEqual([
      { do: 'change-level', piece: 's1', level: 'l1', set: { surface: 850 } },
      { do: 'change-level', piece: 's1', level: 'l2', set: { clear: 230 } },
    ]);
  });
  it('does not lower a board onto what stands below', () => {
    const fix = mend({ materials: [thing('a'), thing('b', 160)], placements: [on('a', 'l1'), on('b', 'l2')] }, below(850));
    expect(fix?.edits).toEqual([{ do: 'place', placement: { ...placed('a', 'l2'), x: 250 } }]);
  });
  it('nor onto something of unknown height', () => {
    const fix = mend({ materials: [thing('a'), thing('b', null)], placements: [on('a', 'l1'), on('b', 'l2')] }, below(850));
    expect(fix?.edits).toEqual([{ do: 'place', placement: { ...placed('a', 'l2'), x: 250 } }]);
  });
  it('nor where the other side of the shelf would suffer', () => {
    const sides: ('front' | 'back')[] = ['front', 'back'];
    const other = { ...on('b', 'l1'), side: 'back' as const };
    const fix = mend({ sides, materials: [thing('a'), thing('b')], placements: [on('a', 'l1'), other] }, (tray, spot) =>
      tray.material.id === 'b' ? spot.surface >= 900 : spot.surface <= 850,
    );
    expect(fix?.edits).toEqual([{ do: 'place', placement: placed('a', 'l2') }]);
  });
  it('never lowers the top of the shelf, nor one whose height is not known', () => {
    for (const height of [900, null]) {
      const fix = mend({ height, materials: [thing('a')], placements: [on('a', 'l1')] }, below(850));
      expect(fix?.edits).toEqual([{ do: 'place', placement: placed('a', 'l2') }]);
    }
  });
  it('fills gaps from the left, with 50 between the trays where that goes', () => {
    const fix = mend(
      { height: 900, materials: [thing('a'), thing('b'), thing('c')], placements: [on('a', 'l1'), on('b', 'l1', 400), on('c', 'l2', 300)] },
      below(800),
    );
    expect(fix?.edits.map((edit) => edit.do === 'place' && edit.placement.x)).toEqual([0, 550]);
  });
  it('puts them closer where it does not', () => {
    const fix = mend(
      { height: 900, materials: [thing('a'), { ...thing('b'), width: 720 }], placements: [on('a', 'l1'), on('b', 'l2', 230)] },
      below(800),
    );
    expect(fix?.edits.map((edit) => edit.do === 'place' && edit.placement.x)).toEqual([0]);
  });
  it('offers nothing where nothing helps', () => {
    const full = { ...thing('b'), width: 900 };
    expect(mend({ height: 900, materials: [thing('a'), full], placements: [on('a', 'l1'), on('b', 'l2', 30)] }, below(800))).toBeNull();
    expect(mend({ height: 900, materials: [thing('a', 300)], placements: [on('a', 'l1')] }, below(800))).toBeNull();
    expect(mend({ height: 900, materials: [{ ...thing('a'), width: null }], placements: [on('a', 'l1')] }, below(800))).toBeNull();
  });
});

function placed(material: string, level: string) {
  return { material, piece: 's1', side: 'front', level, x: 0, y: 0, turned: false };
}

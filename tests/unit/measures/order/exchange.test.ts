import { describe, expect, it } from 'vitest';
import { measuresOf } from '#model/measures/measures.ts';
import { exchange } from '#model/measures/order/exchange.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type Boards = Parameters<typeof placed>[0];
const GAP = 50;

/** The exchange of two trays; where they come to stand, as [board, x], or null. */
function exchanged(boards: Boards, sizes: Readonly<Record<string, Parameters<typeof tray>[1]>>, one: string, other: string) {
  const materials = Object.entries(sizes).map(([id, change], i) => tray(id, { step: i + 1, ...change }));
  const scene = buildScene(plainRoom({ pieces: [shelf('a')], materials, placements: placed(boards) }));
  const { relation } = measuresOf(scene).order();
  const at = (id: string): number => relation.reading.findIndex(({ material }) => material.id === id);
  const found = exchange(scene, relation, at(one), at(other), { gap: GAP, isInReach: () => true });
  return found && { ...found, stands: Object.fromEntries(found.placements.map(({ material, level, x }) => [material, [level, x]])) };
}

const two = (m1: number, m2: number) => ({ m1: { width: m1 }, m2: { width: m2 } });

describe('two trays in each other’s place', () => {
  it('on two boards: each at the x of the other, read after as exchanged', () => {
    const found = exchanged({ 'a-1': ['m2'], 'a-2': [['m1', 400]] }, two(200, 200), 'm2', 'm1');
    expect(found?.stands).toEqual({ m1: ['a-1', 0], m2: ['a-2', 400] });
    expect(found?.readAfter()).toEqual(['m1', 'm2']);
    expect(found?.shortages).toEqual([]);
  });

  it('on one board: a narrower one to the left leaves more, a wider one only where the gap is left', () => {
    expect(
      exchanged(
        {
          'a-1': [
            ['m2', 0],
            ['m1', 300],
          ],
        },
        two(200, 250),
        'm2',
        'm1',
      )?.stands,
    ).toEqual({ m1: ['a-1', 0], m2: ['a-1', 300] });
    // 250 wide at 0 ends 50 before 300: just the gap. 260 would leave 40.
    expect(
      exchanged(
        {
          'a-1': [
            ['m2', 0],
            ['m1', 300],
          ],
        },
        two(250, 200),
        'm2',
        'm1',
      ),
    ).not.toBeNull();
    expect(
      exchanged(
        {
          'a-1': [
            ['m2', 0],
            ['m1', 300],
          ],
        },
        two(260, 200),
        'm2',
        'm1',
      ),
    ).toBeNull();
  });

  it('not onto a third one, and not over the end of the board', () => {
    const beside = { ...two(300, 200), m3: { width: 200 } };
    expect(
      exchanged(
        {
          'a-1': [
            ['m2', 0],
            ['m3', 250],
          ],
          'a-2': ['m1'],
        },
        beside,
        'm2',
        'm1',
      ),
    ).toBeNull();
    expect(exchanged({ 'a-1': [['m2', 1000]], 'a-2': ['m1'] }, two(300, 200), 'm2', 'm1')).toBeNull();
  });

  it('says who stands to the left afterwards, the other one too', () => {
    const places = exchanged(
      {
        'a-1': [
          ['m2', 0],
          ['m1', 300],
        ],
      },
      two(200, 200),
      'm2',
      'm1',
    )?.places;
    const behind = Object.fromEntries((places ?? []).map((place) => [place.material, place.behind]));
    expect(behind).toEqual({ m1: null, m2: 'm1' });
  });

  it('not where one is too tall for the board', () => {
    const tall = { m1: { height: 400 }, m2: {} };
    expect(exchanged({ 'a-2': ['m2'], 'a-1': ['m1'] }, tall, 'm2', 'm1')).toBeNull();
  });
});

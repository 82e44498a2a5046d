import { describe, expect, it } from 'vitest';
import { threadLayout } from '#client/sheets/materials/threadLayout.ts';
import { areaKey, buildThreads } from '#client/sheets/materials/threads.ts';
import { whereaboutsOf } from '#client/sheets/materials/whereabouts.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const shelf = (id: string, x: number) => ({
  id,
  kind: 'shelf' as const,
  x,
  y: 200,
  width: 1400,
  depth: 320,
  height: 700,
  levels: [
    { id: 'top', surface: 640 },
    { id: 'low', surface: 60 },
  ],
});
const scene = buildScene(
  plainRoom({
    materials: [
      { id: 'a', name: 'A', area: 'mathematics', strand: 'counting', step: 1, width: 300 },
      { id: 'b', name: 'B', area: 'mathematics', strand: 'counting', step: 2, width: 300 },
      { id: 'c', name: 'C', area: 'mathematics', strand: 'counting', step: 3, width: 300 },
      { id: 'd', name: 'D', area: 'mathematics', strand: 'counting', step: 4, width: 300 },
      { id: 'e', name: 'E', area: 'culture', strand: 'art', width: 300, state: 'store' },
      { id: 'f', name: 'F', area: 'Garden', width: 300 },
      { id: 'g', name: 'G', width: null, stands: 'none' },
    ],
    pieces: [shelf('s1', 1000), shelf('s2', 3000)],
    walk: [
      { piece: 's2', side: 'front' },
      { piece: 's1', side: 'front' },
    ],
    placements: [
      { material: 'a', piece: 's1', level: 'top', x: 400 },
      { material: 'b', piece: 's1', level: 'top', x: 0 },
      { material: 'c', piece: 's2', level: 'low', x: 0 },
      { material: 'f', piece: null, x: 4000, y: 4000 },
    ],
  }),
);

describe('where materials are', () => {
  it('on a board with their place, on the table, in the room, not out, or nowhere to be put', () => {
    const where = whereaboutsOf(scene);
    expect(where.get('a')).toMatchObject({ at: 'board', boardName: 'Top', place: 2 });
    expect(Object.fromEntries(['d', 'e', 'f', 'g'].map((id) => [id, where.get(id)?.at]))).toEqual({
      d: 'table',
      e: 'away',
      f: 'room',
      g: 'none',
    });
  });
});

describe('threads', () => {
  const threads = buildThreads(scene, new Set(['a']));

  it('one for each area, those of the trade first, art apart, then the own ones', () => {
    expect(threads.map(({ key }) => key)).toEqual(['MA', 'AR', 'Garden', '–']);
    expect(areaKey({ area: 'culture', strand: 'zoology' })).toBe('CU');
  });

  it('hold the trays as a child meets them, cut by the shelves of the walk', () => {
    const [mathematics] = threads;
    expect(mathematics?.parts.map(({ side, ids }) => [side.piece.id, ids])).toEqual([
      ['s2', ['c']],
      ['s1', ['b', 'a']],
    ]);
  });

  it('count what is there, on the table and out of step', () => {
    expect(threads[0]).toMatchObject({ count: 4, onTable: ['d'], misplaced: 1 });
  });
});

describe('a thread on the sheet', () => {
  const part = (n: number, from = 0) => ({
    side: scene.sides[0] as (typeof scene.sides)[number],
    ids: Array.from({ length: n }, (_, i) => `${from + i}`),
  });

  it('draws every step once, in order, within the width', () => {
    for (const width of [140, 260, 600, 900]) {
      const { marks, lines } = threadLayout({ parts: [part(14), part(30, 100), part(3, 200)] }, width);
      expect(marks.map(({ id }) => id)).toEqual([...part(14).ids, ...part(30, 100).ids, ...part(3, 200).ids]);
      for (const mark of marks) expect(mark.x).toBeLessThanOrEqual(width);
      expect(Math.max(...marks.map(({ line }) => line))).toBe(lines - 1);
    }
  });

  it('never draws two steps in one place', () => {
    const { marks } = threadLayout({ parts: [part(60), part(60, 100)] }, 300);
    const places = new Set(marks.map(({ x, line }) => `${line}/${x.toFixed(2)}`));
    expect(places.size).toBe(marks.length);
  });

  it('begins and ends each shelf once', () => {
    const { runs } = threadLayout({ parts: [part(40), part(5, 100)] }, 260);
    expect(runs.filter(({ isStart }) => isStart)).toHaveLength(2);
    expect(runs.filter(({ isEnd }) => isEnd)).toHaveLength(2);
  });
});

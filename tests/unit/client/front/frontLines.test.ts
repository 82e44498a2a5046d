import { describe, expect, it } from 'vitest';
import { contentOf, contentStrokes } from '#client/front/drawings.ts';
import { frontLines, type LineHeights, sayLines } from '#client/front/frontLines.ts';
import { lineHeights } from '#client/front/lineHeights.ts';
import type { PlainRoomChange } from '#tests/support/plainRoom.ts';
import { layoutOf, shelfRoom } from './shelf.ts';

const linesOf = (change: PlainRoomChange) => {
  const scene = shelfRoom([], {
    materials: [{ id: 'a', name: 'A', width: 300, depth: 200, height: 100 }],
    placements: [{ material: 'a', piece: 's1', level: 'top', x: 0 }],
    ...change,
  });
  const [side] = scene.sides;
  return side ? lineHeights(scene, side, layoutOf(scene)) : null;
};

describe('lines of the smallest child', () => {
  // A girl of 3.0 years at the 5th percentile, hand 100 deep, grip 50: worked by hand from CDC 2000 stature for age and
  // the ratios of UM-HSRI-77-17 (1977): highest take 855, eye 778.5.
  it('are those of the worked example', () => {
    const heights = linesOf({});
    const top = heights?.boards.find((board) => Math.abs(board.atDepth - 100) < 0.01);
    expect(top?.take).toBeGreaterThan(854);
    expect(top?.take).toBeLessThan(856);
    expect(heights?.eye).toBeCloseTo(778.5, 0);
  });

  it('come with the advisory pair only where a wheelchair user is served', () => {
    expect(linesOf({})?.advisory).toBeNull();
    // 2010 ADA Standards, advisory 308.1: ages 3 and 4, 36 in (915) and 20 in (510).
    expect(linesOf({ access: { wheelchair: true } })?.advisory).toEqual({ high: 915, low: 510 });
    const mixed = { children: { groups: [{ id: 'g', name: '', fromMonths: 36, toMonths: 84, count: 9 }] }, access: { wheelchair: true } };
    expect(linesOf(mixed)?.advisory).toEqual({ high: 915, low: 510 });
  });

  it('are left out when nobody says how old the children are', () => {
    expect(linesOf({ children: { groups: [] } })).toBeNull();
  });

  const child = { months: 36, percentile: 5, isMeasured: false, stature: 880 };
  const heightsOf = (...boards: [name: string, atDepth: number][]): LineHeights => ({
    eye: 780,
    child,
    advisory: null,
    boards: boards.map(([name, atDepth]) => ({ name, atDepth, take: 900 - atDepth, see: 700 - atDepth / 4 })),
  });
  const takes = (heights: LineHeights) =>
    frontLines(heights, 'metric')
      .filter(({ kind }) => kind === 'take')
      .map(({ text }) => text);

  it('are drawn once where all boards are taken at about the same depth, for the deepest', () => {
    expect(takes(heightsOf(['Top', 100], ['Middle', 120], ['Low', 110]))).toEqual(['0.78 m']);
  });

  it('say which boards they belong to where those are taken at clearly different depths', () => {
    expect(takes(heightsOf(['Top', 100], ['Middle', 110], ['Low', 170]))).toEqual(['0.79 m, top, middle', '0.73 m, low']);
    // Of three depths the nearest keeps its own line, the others share that of the deepest, where a hand reaches least high.
    expect(takes(heightsOf(['Top', 100], ['Middle', 170], ['Low', 240]))).toEqual(['0.80 m, top', '0.66 m, middle, low']);
  });

  it('are told apart without colour: of two of a kind the lower is drawn double', () => {
    const lines = frontLines(heightsOf(['Top', 100], ['Low', 200]), 'metric');
    expect(lines.map(({ kind, text, isDouble }) => [kind, text, isDouble])).toEqual([
      ['take', '0.80 m, top', false],
      ['eye', '0.78 m', false],
      ['take', '0.70 m, low', true],
      ['see', '0.68 m, top', false],
      ['see', '0.65 m, low', true],
    ]);
  });

  it('say in words whose lines they are and at which depth', () => {
    expect(sayLines(heightsOf(['Top', 140], ['Low', 142]), 'metric')).toBe(
      'Lines for a girl of 3 years 0 months, smaller than 95 of 100; the hand 0.14 m behind the front.',
    );
    expect(sayLines(heightsOf(['Top', 100], ['Low', 200]), 'metric')).toBe(
      'Lines for a girl of 3 years 0 months, smaller than 95 of 100; the hand 0.20 m behind the front (low), 0.10 m behind the front (top).',
    );
    expect(sayLines({ ...heightsOf(), child: { ...child, isMeasured: true } }, 'metric')).toBe(
      'Lines for your smallest child, 0.88 m tall.',
    );
  });

  it('say nothing of taking where the arm ends before the board', () => {
    const lines = frontLines({ ...heightsOf(), boards: [{ name: 'Top', atDepth: 400, take: null, see: 640 }] }, 'metric');
    expect(lines.map(({ kind }) => kind)).toEqual(['eye', 'see']);
  });
});

describe('the drawing of what stands on a tray', () => {
  it('goes by the name, else by what a child does with it', () => {
    expect(contentOf({ name: 'Frame with large buttons', mode: 'practise' })).toBe('frame');
    expect(contentOf({ name: 'Something of ours', mode: 'pair' })).toBe('pairs');
    expect(contentOf({ name: 'Something of ours', mode: null })).toBe('chest');
  });

  it('of cylinders without knobs is four that stand apart, and no knob', () => {
    expect(contentOf({ name: 'Knobless cylinders, four coloured sets', mode: 'grade' })).toBe('cylinders');
    expect(contentOf({ name: 'Solid insets: cylinders varying in height', mode: 'grade' })).toBe('knobs');
    const strokes = contentStrokes('cylinders', 60, 30);
    expect(strokes.map(({ kind }) => kind)).not.toContain('ring');
    const ends = strokes.flatMap((stroke) => {
      if (stroke.kind !== 'line') return [];
      const xs = stroke.points.filter((_, i) => i % 2 === 0);
      return [[Math.min(...xs), Math.max(...xs)] as const];
    });
    // Each is a rim and a body of the same width; the next begins beyond it.
    expect(ends).toHaveLength(8);
    for (let i = 0; i < 8; i += 2) {
      expect(ends[i]?.[0]).toBeCloseTo(ends[i + 1]?.[0] ?? Number.NaN, 6);
      expect(ends[i]?.[1]).toBeCloseTo(ends[i + 1]?.[1] ?? Number.NaN, 6);
      if (i > 0) expect(ends[i]?.[0]).toBeGreaterThan((ends[i - 1]?.[1] ?? 0) + 1);
    }
  });

  it('stays in its box, and is left out where the box is too flat', () => {
    for (const content of [
      'rods',
      'knobs',
      'cylinders',
      'cubes',
      'frame',
      'beads',
      'cards',
      'vessels',
      'pairs',
      'steps',
      'shapes',
      'chest',
      'globe',
    ] as const) {
      expect(contentStrokes(content, 40, 3)).toEqual([]);
      const strokes = contentStrokes(content, 60, 30);
      expect(strokes.length).toBeGreaterThan(0);
      for (const stroke of strokes) {
        const ys =
          stroke.kind === 'line'
            ? stroke.points.filter((_, i) => i % 2 === 1)
            : stroke.kind === 'box'
              ? [stroke.y, stroke.y + stroke.height]
              : [stroke.y - stroke.radius, stroke.y + stroke.radius];
        for (const y of ys) expect(y).toBeGreaterThanOrEqual(-0.01);
        for (const y of ys) expect(y).toBeLessThanOrEqual(30.01);
      }
    }
  });
});

import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { door } from '#model/rules/way/door.ts';
import { width } from '#model/rules/way/width.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

/**
 * Worked figures of the ADA Standards for Accessible Design, 2010: 403.5.1 with its exception (A01, A02), 404.2.3
 * (A09), and an access consultant's reading of the exception (W24: the length limit binds the shorter side only).
 * The rooms are ours.
 */
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const IN = 25.4;
const block = (id: string, x: number, y: number, w: number, d: number): Piece => ({
  id,
  kind: 'other',
  x: x + w / 2,
  y: y + d / 2,
  width: w,
  depth: d,
});
const shelf: Piece = { id: 's1', kind: 'shelf', x: 3000, y: 4840, width: 1200, depth: 320, rotation: 180 };

const measure = (pieces: Piece[], change: PlainRoomChange = {}) => {
  const scene = buildScene(plainRoom({ access: { required: true }, ...change, pieces }));
  const measures = measuresOf(scene);
  const way = measures
    .ways()
    .exact()
    .find((w) => w.to === 's1');
  if (!way) throw new Error('no way to s1');
  return { way, answer: judgeRule(width, scene, measures).answer, narrow: measures.ways().narrow };
};
/** Screens across the room that leave a way at the east wall. */
const screens = (...gaps: { at: number; wide: number; long: number }[]): Piece[] =>
  gaps.map(({ at, wide, long }, i) => block(`w${i + 1}`, 0, at, 6000 - wide, long));

describe('403.5.1: clear width 36 in, 32 in for at most 24 in, 48 in apart', () => {
  it.each([
    { name: '36 in, any length', gaps: [{ at: 1500, wide: 36 * IN, long: 2000 }], judged: 'fine' },
    { name: 'a quarter inch less, long', gaps: [{ at: 1500, wide: 35.75 * IN, long: 2000 }], judged: 'problem' },
    { name: '32 in for 24 in', gaps: [{ at: 1500, wide: 32 * IN, long: 24 * IN }], judged: 'fine' },
    { name: '32 in for 25 in', gaps: [{ at: 1500, wide: 32 * IN, long: 25 * IN }], judged: 'problem' },
    { name: '31.75 in for 1 in', gaps: [{ at: 1500, wide: 31.75 * IN, long: IN }], judged: 'problem' },
    {
      name: 'two pinches 48 in apart',
      gaps: [
        { at: 1000, wide: 32 * IN, long: 24 * IN },
        { at: 1000 + 72 * IN, wide: 32 * IN, long: 24 * IN },
      ],
      judged: 'fine',
    },
    {
      name: 'two pinches 47 in apart',
      gaps: [
        { at: 1000, wide: 32 * IN, long: 24 * IN },
        { at: 1000 + 71 * IN, wide: 32 * IN, long: 24 * IN },
      ],
      judged: 'problem',
    },
    { name: '815 for 610, as printed', gaps: [{ at: 1500, wide: 815, long: 610 }], judged: 'fine' },
  ])('$name: $judged', ({ gaps, judged }) => {
    const { answer, way } = measure([shelf, ...screens(...gaps)]);
    expect(answer).toBe(judged);
    expect(way.width).toBeCloseTo(Math.min(...gaps.map((g) => g.wide)), 2);
  });

  it('W24: a short jamb opposite a long wall counts its own 8 in only', () => {
    const { answer, narrow } = measure([shelf, ...screens({ at: 2000, wide: 32 * IN, long: 8 * IN })]);
    expect(answer).toBe('fine');
    expect(narrow[0]?.length).toBeCloseTo(8 * IN, 2);
    expect(narrow[0]?.width).toBeCloseTo(32 * IN, 2);
  });

  it('two gaps side by side let people pass one by one', () => {
    const column = block('k1', 2850, 2000, 300, 200);
    const sides = [block('w1', 0, 2000, 2850 - 815, 200), block('w2', 3150 + 815, 2000, 2850 - 815, 200)];
    expect(measure([shelf, column, ...sides]).answer).toBe('fine');
  });

  it('the judged width is that of the rest of the way', () => {
    const { way } = measure([shelf, ...screens({ at: 1500, wide: 850, long: 300 }, { at: 3200, wide: 1100, long: 200 })]);
    expect(way.width).toBeCloseTo(850, 2);
    expect(way.judged).toBeCloseTo(1100, 2);
  });
});

describe('403.5.2: round a narrow element (A03, figures of W23)', () => {
  // The element stands from the north wall; people come in at its west, turn south of it, and leave at its east.
  // A disc measures the legs; whether the turn itself is wide enough is another check's question.
  it.each([
    { element: 1200, approach: 1065, turn: 1220, leave: 1065 },
    { element: 1200, approach: 915, turn: 1220, leave: 915 },
    { element: 1200, approach: 915, turn: 1525, leave: 915 },
    { element: 1220, approach: 915, turn: 915, leave: 915 },
  ])('$element wide: legs of $approach, $turn, $leave', ({ element, approach, turn, leave }) => {
    const east = approach + element + leave;
    const pieces: Piece[] = [
      block('k1', approach, 0, element, 3000),
      block('w1', 0, 3000 + turn, east, 100),
      block('w2', east, 0, 100, 3000 + turn + 100),
      { id: 's1', kind: 'shelf', x: approach + element + leave / 2, y: 160, width: leave - 10, depth: 320 },
    ];
    const openings = [{ id: 'd1', kind: 'passage', from: 'c1', offset: 0, width: approach } as const];
    const { way } = measure(pieces, { room: { openings } });
    expect(way.width).toBeCloseTo(Math.min(approach, turn, leave), 2);
  });
});

describe('hand geometry', () => {
  it('an L-shaped corridor is as wide as its narrower leg', () => {
    const legs = [block('w1', 0, 1100, 4700, 300), block('w2', 4700, 1100, 300, 2800)];
    const { way } = measure([shelf, ...legs], { access: { required: false } });
    expect(way.width).toBeCloseTo(1000, 2);
    expect(way.between.map((end) => end.id).sort()).toEqual(['w2', 'wall:c2']);
  });

  it('a chained bend is one narrow place as long as both legs and the turn', () => {
    const inner = block('w1', 0, 2000, 5200, 1600);
    const outer = block('w2', 0, 900, 5200, 300);
    const cap = block('w3', 5200, 900, 800, 300);
    // From the west along y 1200..2000, then south along x 5200..6000: both 800 wide.
    const scene = buildScene(plainRoom({ pieces: [inner, outer, cap] }));
    const place = measuresOf(scene)
      .ways()
      .narrow.find((n) => n.width > 700);
    expect(place?.width).toBeCloseTo(800, 2);
    // 5200 and 1600 along the legs, and from one leg's end to the other's across the corner.
    expect(place?.length).toBeCloseTo(5200 + 1600 + Math.hypot(400, 400), 2);
  });

  it('a piece before the door: the gap from the jamb counts', () => {
    // Door clear from 450 to 1300 on the north wall; the block stands 500 before it, as wide as the room to the west.
    const { way } = measure([shelf, block('b1', 0, 500, 2000, 300)], { access: { required: false } });
    expect(way.width).toBeCloseTo(500, 2);
  });

  it('diagonally past a jamb', () => {
    // From the jamb (1300, 0) to the block's corner (1000, 600); behind the block is no way through.
    const { way } = measure([shelf, block('b1', 0, 600, 1000, 300)], { access: { required: false } });
    expect(way.width).toBeCloseTo(Math.hypot(300, 600), 2);
    expect(way.at?.x).toBeCloseTo(1150, 1);
    expect(way.at?.y).toBeCloseTo(300, 1);
  });

  it('touching and overlapping pieces shut the way', () => {
    const { way } = measure([
      shelf,
      block('w1', 0, 2000, 3000, 300),
      block('w2', 3000, 2100, 1500, 300),
      block('w3', 4400, 2000, 1700, 300),
    ]);
    expect(way.width).toBe(0);
    expect(way.at).toBeNull();
  });
});

describe('404.2.3: doors 32 in clear, 36 in where deeper than 24 in', () => {
  it.each([
    { clear: 32 * IN, depth: null, judged: 'fine' },
    { clear: 31.75 * IN, depth: null, judged: 'problem' },
    { clear: 32 * IN, depth: 24 * IN, judged: 'fine' },
    { clear: 32 * IN, depth: 25 * IN, judged: 'problem' },
    { clear: 36 * IN, depth: 25 * IN, judged: 'fine' },
  ])('$clear mm clear, $depth mm deep: $judged', ({ clear, depth, judged }) => {
    const openings = [{ id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 1000, clear, depth, swing: 'out-left' } as const];
    const scene = buildScene(plainRoom({ room: { openings }, access: { required: true } }));
    expect(judgeRule(door, scene, measuresOf(scene)).answer).toBe(judged);
  });
});

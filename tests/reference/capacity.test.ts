import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { childrenOn } from '#model/measures/roomNeeds.ts';
import { area } from '#model/rules/places/area.ts';
import { buildScene } from '#model/scene/build.ts';
import { fixtureCounts } from '#model/standards/fixtureCounts.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { index, workedExample } from '#tests/support/standardsIndex.ts';

// Worked examples of capacity: licensing reports and hand-worked cases of the index (addresses and notes stand there).
const FOOT = 304.8;
const M2_PER_SQ_FT = 0.09290304;
const inSqFt = (m2: number | undefined): number => (m2 ?? Number.NaN) / M2_PER_SQ_FT;

interface Case {
  readonly ruleSet: string;
  /** mm */
  readonly room: readonly [width: number, depth: number];
  /** mm; storage cupboards along the north wall, side by side */
  readonly deducted?: readonly (readonly [width: number, depth: number])[];
  /** m² */
  readonly others?: readonly number[];
  readonly fromMonths?: number;
  readonly children?: number;
}
function measured({ ruleSet, room: [w, d], deducted = [], others = [], fromMonths = 36, children = 10 }: Case) {
  let left = 0;
  const zones = deducted.map(([width, depth], i) => {
    const at = left;
    left += width;
    const outline: [number, number][] = [
      [at, 0],
      [at + width, 0],
      [at + width, depth],
      [at, depth],
    ];
    return { id: `z${i}`, kind: 'storage' as const, outline };
  });
  const change: PlainRoomChange = {
    ruleSet,
    children: { groups: [{ id: 'g1', fromMonths, toMonths: fromMonths + 12, count: children }] },
    room: {
      corners: [
        { id: 'c1', x: 0, y: 0 },
        { id: 'c2', x: w, y: 0 },
        { id: 'c3', x: w, y: d },
        { id: 'c4', x: 0, y: d },
      ],
      zones,
      otherRooms: others.map((area, i) => ({ name: `room ${i + 2}`, area })),
    },
  };
  const classroom = plainRoom(change);
  const scene = buildScene(classroom);
  const measures = measuresOf(scene);
  const floor = measures.floorPlaces();
  return { ...floor, floor: floor.counted, answer: judgeRule(area, scene, measures).answer };
}
const feet = ([w = 0, d = 0]: readonly number[]): [number, number] => [w * FOOT, d * FOOT];
/** A room of an area in square feet, 20 ft deep, and a cupboard of one, 1 ft deep. */
const ofArea = (sqFt: number): [number, number] => feet([sqFt / 20, 20]);
const cupboard = (sqFt: number): [number, number] => feet([sqFt, 1]);
const numbers = (value: unknown): number[] => value as number[];

describe('licensed places by floor', () => {
  it('W01: four equal rooms, small deductions', () => {
    const { inputs, expected } = workedExample('W01');
    const perRoom = Number(expected.per_room_net_sqft);
    const got = measured({
      ruleSet: 'us-florida',
      room: feet(numbers(inputs.room_ft)),
      deducted: numbers(inputs.deduct_sqft).map(cupboard),
      others: [1, 2, 3].map(() => perRoom * M2_PER_SQ_FT),
    });
    expect(inSqFt((got.floor?.least ?? 0) - (got.floor?.others ?? 0))).toBeCloseTo(perRoom, 6);
    expect(got.byArea).toBe(expected.children);
    // Divides exactly: rounding room by room changes nothing.
    expect(got.byAreaPerRoom).toBe(4 * Number(expected.per_room_children));
  });
  it('W02: one room with built-ins', () => {
    const { inputs, expected } = workedExample('W02');
    const got = measured({
      ruleSet: 'us-california',
      room: feet(numbers(inputs.room_ft)),
      deducted: [feet([Number(inputs.encumbered_sqft) / 10, 10])],
    });
    expect(inSqFt(got.floor?.inside)).toBeCloseTo(Number(expected.gross_sqft), 2);
    expect(inSqFt(got.floor?.least)).toBeCloseTo(Number(expected.net_sqft), 2);
    expect(got.byArea).toBe(expected.children);
  });
  it('W04: one room, five blocked rectangles', () => {
    const { inputs, expected } = workedExample('W04');
    const blocked = numbers(inputs.encumbered_sqft);
    const got = measured({
      ruleSet: 'us-california',
      room: ofArea(Number(inputs.gross_sqft)),
      deducted: blocked.map((sqFt) => feet([sqFt / 10, 10])),
    });
    expect(inSqFt(got.floor?.least)).toBeCloseTo(Number(expected.net_sqft), 4);
    expect(got.byArea).toBe(expected.children);
    expect(got.floor?.items.filter((item) => item.answer === 'deduct').map((item) => Number(inSqFt(item.deducted).toFixed(4)))).toEqual(
      blocked,
    );
  });
  it.each(['W06', 'W08', 'W09', 'W10'])('%s: rooms added, then rounded down', (id) => {
    const { inputs, expected } = workedExample(id);
    const [first = 0, ...rest] = numbers(inputs.net_sqft);
    const got = measured({ ruleSet: 'us-california', room: ofArea(first), others: rest.map((sqFt) => sqFt * M2_PER_SQ_FT) });
    expect(got.byArea).toBe(expected.children);
    if (expected.sum_sqft !== undefined) expect(inSqFt(got.floor?.least)).toBeCloseTo(Number(expected.sum_sqft), 2);
    // W06 and its note: rounding room by room gives 54, one fewer.
    if (id === 'W06') expect(got.byAreaPerRoom).toBe(54);
  });
  it('W09: the printed total is two square feet off and changes nothing', () => {
    const { expected } = workedExample('W09');
    expect(measured({ ruleSet: 'us-california', room: ofArea(Number(expected.printed_sum_sqft)) }).byArea).toBe(expected.children);
  });
  it('W11: one room of the report is rounded up; rounding down gives the total all the same', () => {
    const { inputs, expected } = workedExample('W11');
    const areas = numbers(inputs.net_sqft);
    expect(areas.map((sqFt) => measured({ ruleSet: 'us-california', room: ofArea(sqFt) }).byArea)).toEqual(expected.floor_children);
    const [first = 0, ...rest] = areas;
    const got = measured({ ruleSet: 'us-california', room: ofArea(first), others: rest.map((sqFt) => sqFt * M2_PER_SQ_FT) });
    expect(got.byArea).toBe(expected.printed_total);
    expect(got.byAreaPerRoom).toBe(numbers(expected.floor_children).reduce((a, b) => a + b));
  });
  it('W12: a minimal room', () => {
    const { inputs, expected } = workedExample('W12');
    expect(measured({ ruleSet: 'us-florida', room: feet(numbers(inputs.room_ft)) }).byArea).toBe(expected.children);
  });
  it('W13: the area a group needs', () => {
    const { inputs, expected } = workedExample('W13');
    const got = measured({ ruleSet: 'us-florida', room: feet(numbers(inputs.room_ft)), children: Number(inputs.children) });
    expect(inSqFt(got.need?.need)).toBeCloseTo(Number(expected.needed_sqft), 9);
    expect(inSqFt(got.floor?.least)).toBeCloseTo(Number(expected.have_sqft), 9);
    expect(got.answer).toBe('fine');
    expect(got.byArea).toBe(expected.children);
    expect(measured({ ruleSet: 'us-florida', room: feet(numbers(inputs.room_ft)), children: Number(expected.children) + 1 }).answer).toBe(
      'problem',
    );
  });
  it.each([
    [24, 'children_at_2_5'],
    [36, 'children_at_2_3'],
  ] as const)('W14: an English hall without its office, children from %i months', (fromMonths, key) => {
    const { inputs, expected } = workedExample('W14');
    const [[w = 0, d = 0] = []] = inputs.deduct_m as number[][];
    const [width = 0, depth = 0] = numbers(inputs.room_m);
    const got = measured({ ruleSet: 'england', room: [width * 1000, depth * 1000], deducted: [[w * 1000, d * 1000]], fromMonths });
    expect(got.floor?.least).toBeCloseTo(Number(expected.net_m2), 6);
    expect(got.byArea).toBe(expected[key]);
  });
});

// Yards are no part of a room; what the reports divide by 75 sq ft goes through the same division as the floor.
describe('yards of the same reports', () => {
  const yard = (id: string): { got: number; expected: Record<string, unknown> } => {
    const { inputs, expected } = workedExample(id);
    return { got: childrenOn(Number(inputs.yard_sqft), Number(inputs.yard_sqft_per_child)), expected };
  };
  it('W08: rounded down, as the floor', () => expect(yard('W08').got).toBe(yard('W08').expected.by_yard));
  it('W06: the report rounds its yard up and its floor down; ours rounds both down', () => {
    const { got, expected } = yard('W06');
    expect(got).toBe(expected.by_yard_floor);
    expect(got).toBe(Number(expected.by_yard_as_printed) - 1);
  });
});

it('every example of capacity or fixtures of the index is asked here or in fixtures.test.ts', () => {
  const kinds = index.worked_examples.filter(({ kind }) => /capacity|fixtures/.test(kind)).map(({ id }) => id);
  expect(kinds.sort()).toEqual(['W01', 'W02', 'W04', 'W06', 'W08', 'W09', 'W10', 'W11', 'W12', 'W13', 'W14', 'W18']);
});

describe('toilets and basins of the same reports', () => {
  it.each(['W06', 'W08', 'W09'])('%s', (id) => {
    const { inputs, expected } = workedExample(id);
    const count = fixtureCounts['us-california'];
    expect(Number(inputs.toilets) * (count?.perToilet ?? 0)).toBe(expected.by_toilets);
    expect(Number(inputs.basins) * (count?.perBasin ?? 0)).toBe(expected.by_basins);
  });
});

describe('the same room under each rule', () => {
  // 8 x 6 m, one low open shelf 1.2 x 0.32, a table 1.2 x 0.6; figures divided by hand from the C rows.
  const rules = (groups: [number, number][]) => {
    const classroom = plainRoom({
      ruleSet: 'us-california',
      service: 'day-care',
      children: { groups: groups.map(([fromMonths, count], i) => ({ id: `g${i}`, fromMonths, toMonths: fromMonths + 12, count })) },
      room: {
        corners: [
          { id: 'c1', x: 0, y: 0 },
          { id: 'c2', x: 8000, y: 0 },
          { id: 'c3', x: 8000, y: 6000 },
          { id: 'c4', x: 0, y: 6000 },
        ],
      },
      pieces: [
        { id: 's1', kind: 'shelf', x: 2000, y: 160, width: 1200, depth: 320 },
        { id: 't1', kind: 'table', x: 4000, y: 3000, width: 1200, depth: 600 },
      ],
    });
    return new Map(
      measuresOf(buildScene(classroom))
        .placesByRuleSet()
        .map((one) => [one.rules.id, one]),
    );
  };
  const [shelf, table] = [0.384, 0.72];
  it.each([
    // id, m² sure, m² at most, children sure, children at most
    ['us-california', 48 - shelf, 48 - shelf, 14, 14],
    ['us-washington', 48, 48, 14, 14],
    ['us-florida', 48 - table, 48, 14, 14],
    ['us-massachusetts', 48 - shelf - table, 48, 14, 14],
    ['us-new-york', 48 - shelf - table, 48, 14, 14],
    ['us-cfoc', 48 - shelf - table, 48 - shelf - table, 12, 12],
    ['us-maryland', 48, 48, 14, 14],
    ['us-montana', 48 - shelf - table, 48 - shelf, 14, 14],
    ['us-texas', 48 - table, 48, 16, 17],
    ['england', 48 - shelf - table, 48, 20, 20],
    ['wales', 48 - shelf - table, 48, 20, 20],
    ['scotland', 48 - shelf - table, 48, 20, 20],
    ['ireland', 48 - shelf - table, 48, 20, 20],
    ['australia', 48, 48, 14, 14],
    ['new-zealand', 48 - shelf - table, 48, 18, 19],
  ])('%s, children of three', (id, least, most, byArea, byAreaMost) => {
    const one = rules([[36, 10]]).get(id);
    expect(one?.counted?.least).toBeCloseTo(least, 9);
    expect(one?.counted?.most).toBeCloseTo(most, 9);
    expect([one?.byArea, one?.byAreaMost]).toEqual([byArea, byAreaMost]);
  });
  it('the class’s own rule has no figure until it is set', () => {
    expect(rules([[36, 10]]).get('own')).toMatchObject({ byArea: null, need: null, rules: { space: null } });
  });
  it('takes each group by its own age', () => {
    // England: 4 x 3.5 + 6 x 2.5 + 10 x 2.3 = 52 m², 2.6 a child: 46.896 / 2.6 = 18.04.
    const england = rules([
      [18, 4],
      [30, 6],
      [66, 10],
    ]).get('england');
    expect(england?.need?.need).toBeCloseTo(52, 9);
    expect([england?.byArea, england?.byAreaMost]).toEqual([18, 18]);
    expect(england?.need?.isBeyondTable).toBe(false);
  });
  it('holds the last row beyond the table, and says so', () => {
    const england = rules([[72, 10]]).get('england');
    expect(england?.need).toMatchObject({ perChild: 2.3, isBeyondTable: true });
  });
});

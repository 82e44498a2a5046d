import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { reportMeasures } from '#model/analysis/reportMeasures.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { measurePlaces } from '#model/measures/places.ts';
import { type AdultGroup, childrenWith } from '#model/measures/roomNeeds.ts';
import { measureWork } from '#model/measures/workPlaces.ts';
import { area } from '#model/rules/places/area.ts';
import { buildScene } from '#model/scene/build.ts';
import * as ratio from '#model/standards/childRatios.ts';
import { ruleSets } from '#model/standards/ruleSets.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

const measures = (change: PlainRoomChange) => measuresOf(buildScene(plainRoom(change)));
const group = (count: number, fromMonths = 36) => ({ id: `g${fromMonths}`, fromMonths, toMonths: fromMonths + 12, count });
const square = (x: number, y: number, side: number): [number, number][] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];

/** Something of every kind; 30 m² inside the walls. */
const furnished: PlainRoomChange = {
  ruleSet: 'us-california',
  children: { groups: [group(8)] },
  room: {
    openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: 4900, width: 1000, swing: 'in-left' }],
    zones: [{ id: 'z1', kind: 'kitchen', outline: square(0, 4000, 1000) }],
    fixtures: [
      { id: 'f1', kind: 'column', x: 3000, y: 4000, width: 400, depth: 400, round: true },
      { id: 'f2', kind: 'sink', x: 5700, y: 4000, width: 600, depth: 450 },
      { id: 'f3', kind: 'built-in', x: 200, y: 1000, width: 400, depth: 1000 },
    ],
  },
  pieces: [
    { id: 's1', kind: 'shelf', x: 2000, y: 200, width: 1000, depth: 400 },
    { id: 's2', kind: 'shelf', x: 3500, y: 200, width: 1000, depth: 400, for: 'adults' },
    { id: 's3', kind: 'shelf', x: 2000, y: 4800, width: 1000, depth: 400, closed: true },
    { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1000, depth: 600 },
    { id: 'r1', kind: 'rug', x: 4500, y: 2500, width: 1000, depth: 1000 },
    { id: 'e1', kind: 'easel', x: 5500, y: 2500, width: 600, depth: 600 },
    // Half over the table, half beside it.
    { id: 'c1', kind: 'seat', x: 3000, y: 2800, width: 300, depth: 300, table: 't1' },
  ],
};

describe('the floor that counts, item by item', () => {
  const { counted } = measures(furnished).floorPlaces();
  const item = (id: string) => counted?.items.find((one) => one.id === id);

  it('names every item with its category, code and answer', () => {
    expect(counted?.items.map(({ id, kind, category, code, answer }) => [id, kind, category, code, answer])).toEqual([
      ['z1', 'kitchen', 'kitchen', 'D', 'deduct'],
      ['d1', 'door', 'door_swing', '?', 'open'],
      ['f1', 'column', null, 'D', 'deduct'],
      ['f3', 'built-in', 'built_in_cabinet', 'D', 'deduct'],
      ['s1', 'shelf', 'open_shelf_for_children', 'D', 'deduct'],
      ['s2', 'shelf', 'shelf_not_for_children', 'D', 'deduct'],
      ['s3', 'shelf', 'closed_storage', 'D', 'deduct'],
      ['t1', 'table', 'table_chair', 'C', 'count'],
      ['r1', 'rug', 'floor_mat', 'C', 'count'],
      ['c1', 'seat', 'table_chair', 'C', 'count'],
    ]);
  });
  it('adds up to what is taken off', () => {
    const off = counted?.items.reduce((sum, one) => sum + one.deducted, 0) ?? 0;
    expect(30 - off).toBeCloseTo(counted?.least ?? 0, 9);
    expect(counted?.open).toEqual(['door_swing']);
    // The leaf of 1000 sweeps a quarter circle, drawn in steps of 5 degrees.
    expect((counted?.most ?? 0) - (counted?.least ?? 0)).toBeCloseTo((18 * Math.sin(Math.PI / 36)) / 2, 3);
    expect(item('s1')).toMatchObject({ area: 0.4, deducted: 0.4, isAsked: false });
    expect(item('t1')).toMatchObject({ area: 0.6, deducted: 0 });
  });
  // Caring for Our Children, 5.1.2.1 (row C20 of the index): furniture is out, tables and chairs by name.
  it('takes off chairs as far as they stand beside their table, and the chair of an adult', () => {
    const chairs = (seatSides: object, more: NonNullable<PlainRoomChange['pieces']> = []) =>
      measures({
        ruleSet: 'us-cfoc',
        pieces: [{ id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600, seatSides }, ...more],
      }).floorPlaces().counted;
    const off = (seatSides: object, more?: NonNullable<PlainRoomChange['pieces']>): number => 30 - (chairs(seatSides, more)?.most ?? 0);
    // Drawn 340 mm wide, 260 mm of them beside the table.
    expect(off({})).toBeCloseTo(0.72, 9);
    expect(off({ front: 2, back: 1 })).toBeCloseTo(0.72 + 3 * 0.34 * 0.26, 9);
    const adult = { id: 'a', kind: 'adult-seat', x: 1000, y: 4000, width: 450, depth: 450 } as const;
    expect(off({}, [adult])).toBeCloseTo(0.72 + 0.2025, 9);
    // A chair drawn as a piece of its own is that chair, not one more.
    const own = { id: 'c', kind: 'seat', table: 't1', x: 3000, y: 2890, width: 340, depth: 340 } as const;
    expect(off({ front: 1 }, [own])).toBeCloseTo(0.72 + 0.34 * 0.26, 9);
    expect(chairs({ front: 2 })?.items.map(({ label }) => label)).toEqual(expect.arrayContaining(['chairs at table t1']));
  });
  it('takes no more of them on a side than could stand there, so that a slip of the keys holds nobody up', () => {
    const seatSides = { front: 10_000, back: 10_000, left: 10_000, right: 10_000 };
    const table = { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600, seatSides } as const;
    const { counted } = measures({ ruleSet: 'us-cfoc', pieces: [table] }).floorPlaces();
    expect(counted?.items.filter(({ label }) => label === 'chairs at table t1').length).toBe(4 * 30);
  });
  // Maryland, COMAR 13A.17.05.03 (row C16): loose children's tables and chairs and an adult's rocking chair count as floor.
  it('leaves them where the text counts them in', () => {
    const piece = { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600, seatSides: { front: 2 } } as const;
    const adult = { id: 'a', kind: 'adult-seat', x: 1000, y: 4000, width: 450, depth: 450 } as const;
    const { counted } = measures({ ruleSet: 'us-maryland', pieces: [piece, adult] }).floorPlaces();
    expect(counted?.items.filter(({ category }) => category === 'table_chair').map(({ answer }) => answer)).toEqual(Array(4).fill('count'));
  });
  it('takes off once what lies over one another', () => {
    const { items } = measures({ ...furnished, ruleSet: 'us-cfoc' }).floorPlaces().counted ?? { items: [] };
    const [table, seat] = ['t1', 'c1'].map((id) => items.find((one) => one.id === id));
    expect(table?.deducted).toBeCloseTo(0.6, 9);
    expect(seat?.area).toBeCloseTo(0.09, 9);
    expect(seat?.deducted).toBeCloseTo(0.045, 6);
  });
  it('goes by the answers of the class, only where the text is silent', () => {
    const answered = measures({ ...furnished, asked: { door_swing: 'count', open_shelf_for_children: 'count' } }).floorPlaces().counted;
    const answers = answered?.items.filter((one) => ['d1', 's1'].includes(one.id)).map(({ answer, isAsked }) => [answer, isAsked]);
    expect(answers).toEqual([
      ['count', true],
      ['deduct', false],
    ]);
    expect(answered?.least).toBe(answered?.most);
  });
});

describe('every rule set side by side', () => {
  it('lists each once, the one in force first', () => {
    const ids = measures({ ...furnished, ruleSet: 'scotland' })
      .placesByRuleSet()
      .map((one) => one.rules.id);
    expect(ids[0]).toBe('scotland');
    expect([...ids].sort()).toEqual(ruleSets.map((set) => set.id).sort());
  });
  it('keeps the class’s own figure to the rule set in force', () => {
    const all = measures({ ...furnished, ruleSet: 'england', options: { 'places/area': { perChild: 5 } } }).placesByRuleSet();
    expect(all.find((one) => one.rules.id === 'england')).toMatchObject({ perChild: 5, rules: { isOwnFigure: true } });
    expect(all.find((one) => one.rules.id === 'wales')).toMatchObject({ perChild: 2.3, rules: { isOwnFigure: false } });
  });
  it('survives the way to another thread', () => {
    const all = measures(furnished).placesByRuleSet();
    expect(structuredClone(all)).toEqual(all);
  });
  it('tells the places of a room without children where the figure is one for all', () => {
    const all = measures({ children: { groups: [] } }).placesByRuleSet();
    expect(all.find((one) => one.rules.id === 'australia')).toMatchObject({ need: null, byArea: 9, byAreaPerRoom: 9 });
    expect(all.find((one) => one.rules.id === 'england')).toMatchObject({ need: null, byArea: null, byAreaPerRoom: null });
  });
  it('has no floor where the walls cross', () => {
    const corners = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 5000 },
      { id: 'c3', x: 6000, y: 0 },
      { id: 'c4', x: 0, y: 5000 },
    ];
    for (const one of measures({ room: { corners } }).placesByRuleSet())
      expect(one).toMatchObject({ counted: null, byArea: null, byAreaPerRoom: null });
  });
});

describe('children per adult', () => {
  const adults = (lead: number, qualified: number, assistant: number): AdultGroup[] => [
    { role: 'lead', count: lead },
    { role: 'qualified', count: qualified },
    { role: 'assistant', count: assistant },
  ];
  // Rows C02, C04, C06, C08, C10, C21 and C25; the products are ours.
  it.each([
    ['England, threes, two adults', ratio.ratioEngland, [group(8)], adults(1, 0, 1), 16],
    ['England, with a qualified teacher', ratio.ratioEngland, [group(8)], adults(0, 1, 1), 26],
    ['England, twos', ratio.ratioEngland, [group(8, 24)], adults(1, 0, 1), 10],
    // Half twos, half threes: (1/5 + 1/8)/2 = 0.1625 of an adult a child.
    ['England, mixed', ratio.ratioEngland, [group(8, 24), group(8)], adults(1, 0, 1), 12],
    ['Scotland, eights', ratio.ratioScotland, [group(8, 96)], adults(1, 0, 1), 20],
    ['Wales, twos', ratio.ratioWales, [group(8, 24)], adults(1, 0, 0), 4],
    ['Ireland, day care, threes', ratio.ratioIreland['day-care'], [group(8)], adults(1, 0, 1), 16],
    ['Ireland, sessional', ratio.ratioIreland.sessional, [group(8)], adults(1, 0, 1), 22],
    ['Australia, threes', ratio.ratioAustralia, [group(8)], adults(1, 0, 1), 22],
    ['guideline, mixed, by the youngest', ratio.ratioCfoc, [group(1, 36), group(9, 60)], adults(1, 0, 1), 14],
    ['California, a teacher alone', ratio.ratioCalifornia, [group(8)], adults(1, 0, 0), 12],
    ['California, with an aide', ratio.ratioCalifornia, [group(8)], adults(1, 0, 1), 15],
    ['California, with a qualified aide', ratio.ratioCalifornia, [group(8)], adults(1, 1, 0), 18],
    ['California, two teachers and one aide', ratio.ratioCalifornia, [group(8)], adults(2, 0, 1), 27],
    ['California, aides alone', ratio.ratioCalifornia, [group(8)], adults(0, 0, 3), 0],
    ['nobody entered', ratio.ratioEngland, [group(8)], adults(0, 0, 0), null],
    ['no children', ratio.ratioEngland, [group(0)], adults(1, 0, 1), null],
  ] as const)('%s', (_, ratios, groups, who, most) => {
    expect(childrenWith(groups, who, ratios)).toBe(most);
  });
});

describe('what binds', () => {
  const floor = (change: PlainRoomChange) => {
    const scene = buildScene(plainRoom(change));
    return { scene, floor: measuresOf(scene).floorPlaces() };
  };
  const places = (found: number) => measureWork(2, { count: found - 2, upperBound: 99 });
  const unknown = measureWork(2, null);
  it('is the smallest of the limits known', () => {
    const england = floor({ adults: 2 });
    // 30 m² / 2.3 = 13; two adults take 16.
    expect(measurePlaces(england.scene, england.floor, places(20))).toEqual({
      byArea: 13,
      byWork: 20,
      byAdults: 16,
      byGroup: null,
      places: 13,
      binding: 'area',
    });
    expect(measurePlaces(england.scene, england.floor, places(9))).toMatchObject({ places: 9, binding: 'work' });
    const one = floor({ adults: 1 });
    expect(measurePlaces(one.scene, one.floor, unknown)).toMatchObject({ byAdults: 8, places: 8, binding: 'adults' });
  });
  it('may be the largest group allowed', () => {
    const big: PlainRoomChange = {
      service: 'sessional',
      ruleSet: 'ireland',
      adults: 3,
      room: { otherRooms: [{ name: 'hall', area: 60 }] },
    };
    const ireland = floor(big);
    expect(measurePlaces(ireland.scene, ireland.floor, unknown)).toMatchObject({
      byArea: 49,
      byAdults: 33,
      byGroup: 22,
      places: 22,
      binding: 'group',
    });
  });
  it('is nothing when no limit is known', () => {
    const own = floor({ ruleSet: 'own' });
    expect(measurePlaces(own.scene, own.floor, unknown)).toEqual({
      byArea: null,
      byWork: null,
      byAdults: null,
      byGroup: null,
      places: null,
      binding: null,
    });
  });
});

describe('the enrolment over the year', () => {
  it('is told date by date, each with its own mix', () => {
    const year = measures({
      enrolment: [
        { from: '2027-09-01', groups: [group(4, 24), group(10)] },
        { from: '2027-04-01', groups: [group(13)] },
      ],
    }).placesOverYear();
    // September: 4 x 2.5 + 10 x 2.3 = 33 m², 30 / (33/14) = 12.7.
    expect(year.map(({ from, children, byArea, over }) => [from, children, byArea, over])).toEqual([
      ['2027-04-01', 13, 13, 0],
      ['2027-09-01', 14, 12, 2],
    ]);
  });
});

describe('in the report', () => {
  // Mats as large as the room: none is looked for.
  const places = (change: PlainRoomChange) =>
    reportMeasures(measures({ ...change, floorWork: { mat: { width: 6000, depth: 6000 } } })).places;
  it('gives the figures of the rule set in force', () => {
    expect(
      places({ ...furnished, ruleSet: 'us-washington', children: { groups: [group(9)] }, asked: { door_swing: 'count' } }),
    ).toMatchObject({
      ruleSet: 'us-washington',
      // 30 less kitchen 1, column, built-in 0.4, adults' shelf 0.4, closed shelf 0.4.
      countedArea: expect.closeTo(27.674, 3),
      needArea: expect.closeTo(29.264458, 6),
      byArea: 8,
      enrolled: 9,
      open: [],
    });
  });
  it('is cautious where the text is silent, and shows both', () => {
    expect(places({ ...furnished, ruleSet: 'england', children: { groups: [group(11)] } })).toMatchObject({
      countedArea: expect.closeTo(24.8448, 3),
      countedAreaMost: expect.closeTo(28.474, 2),
      spareArea: expect.closeTo(24.8448 - 25.3, 3),
      byArea: 10,
      byAreaMost: 12,
      open: ['door_swing', 'built_in_cabinet', 'open_shelf_for_children', 'shelf_not_for_children', 'table_chair', 'floor_mat'],
    });
  });
});

describe('what a finding must not go without', () => {
  const message = (change: PlainRoomChange) => {
    const scene = buildScene(plainRoom(change));
    return judgeRule(area, scene, measuresOf(scene)).findings[0]?.message ?? '';
  };
  it.each<[string, PlainRoomChange, RegExp]>([
    ['that it is no legal advice', { children: { groups: [group(14)] } }, /Not legal advice: your licensing authority decides\.$/],
    ['also when it cannot tell', { ruleSet: 'own' }, /Not legal advice: your licensing authority decides\.$/],
    [
      'how it rounds',
      { children: { groups: [group(15)] }, room: { otherRooms: [{ name: 'hall', area: 2.2 }] } },
      /enough for 14\. Rounded down room by room it is enough for 13\./,
    ],
    ['ages beyond the table', { children: { groups: [group(14, 84)] } }, /outside the ages of its table/],
    ['a figure from memory', { ruleSet: 'us-texas', children: { groups: [group(14)] } }, /from memory: check it/],
    ['a guideline', { ruleSet: 'us-cfoc', children: { groups: [group(14)] } }, /a guideline, no law/],
    ['the class’s own figure', { options: { 'places/area': { perChild: 5 } } }, /under the rule of the class;/],
    [
      'the date',
      { children: { groups: [group(1)] }, enrolment: [{ from: '2027-04-01', groups: [group(14)] }] },
      /^From 1 April 2027 14 children/,
    ],
    [
      'the date with the most',
      {
        children: { groups: [group(1)] },
        enrolment: [
          { from: '2027-04-01', groups: [group(14)] },
          { from: '2027-09-01', groups: [group(16)] },
        ],
      },
      /^From 1 April 2027 14 children .+ Most is asked from 1 September 2027: 16 children need 36\.80 m²\./,
    ],
  ])('%s', (_, change, words) => expect(message(change)).toMatch(words));
});

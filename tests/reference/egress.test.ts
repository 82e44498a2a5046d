import { describe, expect, it } from 'vitest';
import { areaLoad, exitFigures } from '#model/measures/exitFigures.ts';
import { buildScene } from '#model/scene/build.ts';
import { egress, widthEngland, widthIbc } from '#model/standards/egress.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { indexRow, workedExample } from '#tests/support/standardsIndex.ts';

/**
 * Ways out: International Building Code (B01, B02, B04, B05, B07, B13), NFPA 101 (B15) and Approved Document B volume 2
 * (B16 to B18), against the index of published standards and its worked examples. B13, B18 and part of B05 and B16 are
 * from memory there too.
 */
const values = (id: string) => indexRow(id).values;
const { ibc, england } = egress;
const SQUARE_FOOT = 0.3048 ** 2;
const INCH = 25.4;

describe('figures against the index', () => {
  it('B01, B02: floor for each person', () => {
    const { classroom, dayCare } = ibc.squareFeetPerPerson;
    expect(Number((classroom * SQUARE_FOOT).toFixed(3))).toBe(values('B01').m2_per_person);
    expect(Number((dayCare * SQUARE_FOOT).toFixed(3))).toBe(values('B02').m2_per_person);
  });
  it('B04, B07: width for each person, and of a door', () => {
    expect(values('B04')).toMatchObject({ mm_per_person: ibc.widthPerPerson });
    expect(values('B07')).toMatchObject({ clear_width_min_mm: ibc.doorClear });
  });
  it('B05 and B15: one way out', () => {
    expect(values('B05')).toMatchObject({ occupants_max: ibc.oneWayOut.persons, common_path_max_mm: ibc.oneWayOut.walk });
    // The two codes differ with sprinklers; the stricter one is taken.
    expect(values('B15')).toMatchObject({ educational_common_path_mm: ibc.oneWayOut.walk });
    expect(ibc.outwardFrom).toBe(ibc.oneWayOut.persons + 1);
  });
  it('B13, B16: longest walks', () => {
    expect(values('B13')).toEqual({ group_e_mm: ibc.walk.plain, group_e_sprinklered_mm: ibc.walk.sprinklered });
    expect(values('B16')).toMatchObject({
      one_direction_mm: england.walk.oneDirection,
      several_directions_mm: england.walk.severalDirections,
    });
  });
  it('B17: widths by persons, on both sides of each step', () => {
    const text = JSON.stringify(values('B17'));
    for (const { persons, width } of england.widths) {
      expect(text).toContain(String(persons));
      expect(text).toContain(String(width));
      expect(widthEngland(persons)).toBe(width);
      expect(widthEngland(persons + 1)).toBeGreaterThan(width);
    }
    expect(widthEngland(300)).toBe(300 * england.widthPerPerson);
  });
  it('B18: exits by persons', () => {
    expect(values('B18')).toEqual({ one_exit_persons_max: england.persons.oneExit, two_exits_persons_max: england.persons.twoExits });
  });
});

describe('worked examples', () => {
  it('W16: 900 sq ft of classroom are 45 persons', () => {
    const { inputs, expected } = workedExample('W16');
    expect(areaLoad(Number(inputs.area_sqft) * SQUARE_FOOT, ibc.squareFeetPerPerson.classroom)).toBe(expected.load);
  });
  it('W17: 985 sq ft are 49.25; raised they are 50, one more than one exit serves', () => {
    const { inputs, expected } = workedExample('W17');
    const load = areaLoad(Number(inputs.area_sqft) * SQUARE_FOOT, ibc.squareFeetPerPerson.classroom);
    expect(load).toBe(expected.load_ceil);
    expect(load).toBeGreaterThan(ibc.oneWayOut.persons);
  });
  it('W19: 480 persons by two exits: 48 in each', () => {
    const { inputs, expected } = workedExample('W19');
    // 5.1 mm is 0.2 in rounded up by 0.4 %.
    const each = widthIbc(Number(inputs.persons) / Number(inputs.exits));
    expect(each / INCH).toBeGreaterThanOrEqual(Number(expected.each_in));
    expect(each / INCH).toBeLessThan(Number(expected.each_in) * 1.005);
    const scene = buildScene(
      plainRoom({
        exitRules: 'us-ibc',
        adults: 0,
        children: { groups: [{ id: 'g', fromMonths: 60, toMonths: 72, count: Number(inputs.persons) }] },
      }),
    );
    expect(exitFigures(scene)?.doorWidth(Number(inputs.exits))).toBeCloseTo(each, 6);
  });
  it('W20: the corridor that 450 persons share needs 90 in, undivided', () => {
    const { inputs, expected } = workedExample('W20');
    const wide = widthIbc(Number(inputs.persons)) / INCH;
    expect(wide).toBeGreaterThanOrEqual(Number(expected.corridor_undivided_in));
    expect(wide).toBeLessThan(Number(expected.corridor_undivided_in) * 1.005);
  });
});

describe('persons', () => {
  const persons = (change: Parameters<typeof plainRoom>[0]) => exitFigures(buildScene(plainRoom(change)))?.persons;
  it('the larger of those entered and the floor over the area for each', () => {
    expect(persons({ exitRules: 'us-ibc' })).toEqual({ entered: 10, byArea: Math.ceil(30 / 1.858), count: 17 });
    expect(persons({ exitRules: 'england-adb' })).toEqual({ entered: 10, byArea: null, count: 10 });
  });
  it('a child under 30 months makes it day care', () => {
    const children = { groups: [{ id: 'g1', fromMonths: 29, toMonths: 40, count: 1 }] };
    expect(persons({ exitRules: 'us-ibc', children })).toEqual({ entered: 3, byArea: Math.ceil(30 / 3.252), count: 10 });
  });
  it('toilets, storage and passages to elsewhere are no net floor', () => {
    const zone = (id: string, kind: 'toilet' | 'walkway', x: number) =>
      ({
        id,
        kind,
        outline: [
          [x, 0],
          [x + 1000, 0],
          [x + 1000, 5000],
          [x, 5000],
        ],
      }) satisfies { outline: [number, number][]; [key: string]: unknown };
    const zones = [zone('z1', 'toilet', 0), zone('z2', 'walkway', 2000)];
    expect(persons({ exitRules: 'us-ibc', room: { zones } })?.byArea).toBe(Math.ceil(25 / 1.858));
  });
});

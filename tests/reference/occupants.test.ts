import { describe, expect, it } from 'vitest';
import { measureOccupants } from '#model/measures/occupants.ts';
import { buildScene } from '#model/scene/build.ts';
import { occupantLoad } from '#model/standards/occupantLoad.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { indexRow, workedExample } from '#tests/support/standardsIndex.ts';

const FOOT = 304.8;

/** A room of an area in square feet, 20 ft deep. */
function load(squareFeet: number, fromMonths = 36) {
  const [w, d] = [(squareFeet / 20) * FOOT, 20 * FOOT];
  const corners = [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: w, y: 0 },
    { id: 'c3', x: w, y: d },
    { id: 'c4', x: 0, y: d },
  ];
  const children = { groups: [{ id: 'g1', fromMonths, toMonths: fromMonths + 12, count: 20 }] };
  return measureOccupants(buildScene(plainRoom({ room: { corners, openings: [] }, children })));
}

// International Building Code, table 1004.5, by worked examples of practitioners: W16 900 sq ft make 45 persons, W17 985
// sq ft make 49.25, which some round down and some up.
describe('persons that a model code reckons with', () => {
  it('has the figures of the index', () => {
    expect(occupantLoad.classroom.m2).toBeCloseTo(Number(indexRow('B01').values.m2_per_person), 3);
    expect(occupantLoad.dayCare.m2).toBeCloseTo(Number(indexRow('B02').values.m2_per_person), 3);
  });
  it('W16: a plain classroom', () => {
    const { inputs, expected } = workedExample('W16');
    // The index rounds 20 sq ft to 1.858 m².
    expect(load(Number(inputs.area_sqft))?.load).toBeCloseTo(Number(expected.load), 1);
  });
  it('W17: a part of a person', () => {
    const { inputs, expected } = workedExample('W17');
    const found = load(Number(inputs.area_sqft))?.load ?? 0;
    expect(found).toBeCloseTo(Number(expected.load_exact), 1);
    expect([Math.floor(found), Math.ceil(found)]).toEqual([expected.load_floor, expected.load_ceil]);
  });
  it('goes by day care with a child under 30 months', () => {
    expect(load(700, 29)?.load).toBeCloseTo(20, 1);
    expect(load(700, 30)?.load).toBeCloseTo(35, 1);
  });
});

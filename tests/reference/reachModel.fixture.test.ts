import { describe, expect, it } from 'vitest';
import { massOf } from '#model/measures/childMass.ts';
import { type ChildModel, childModel } from '#model/measures/childModel.ts';
import { seeLine, takeLimit } from '#model/measures/reachCurves.ts';
import { segmentRatios } from '#model/standards/segmentRatios.ts';
import { readCsv } from '#tests/support/readCsv.ts';

// UM-HSRI-77-17 (1977 records), fits and model outputs computed outside this project from the stored records.
const fits = readCsv('ratio-fits.csv');
const outputs = readCsv('model-outputs.csv');

it.each([
  ['verticalGripReach', 'vertical_grip_reach'],
  ['shoulder', 'suprasternale_height'],
  ['eye', 'eye_height_standing_derived'],
  ['axilla', 'axilla_height'],
  ['foot', 'foot_length'],
  ['armToGrip', 'arm_to_grip'],
] as const)('the fit of %s is the fit of the survey', (name, measure) => {
  const row = fits.find((fit) => fit.measure_over_stature === measure);
  const { c0, c1, c2, residual } = segmentRatios[name];
  expect([c0, c1, c2, residual]).toEqual([row?.c0, row?.c1, row?.c2, row?.residual_sd].map(Number));
  for (const years of [3, 6, 9, 12]) {
    // The printed coefficients are rounded, so the last printed digit may differ by one.
    expect(Math.abs(c0 + c1 * years + c2 * years * years - Number(row?.[`at_${years}_0`]))).toBeLessThan(1.01e-4);
  }
});

/** An empty cell of the fixture: out of reach at that depth. */
const rounded = (value: number | null, digits = 0): string => (value === null ? '' : value.toFixed(digits));

const column: Readonly<Record<string, (child: ChildModel) => string>> = {
  stature: (c) => rounded(c.stature),
  shoulder: (c) => rounded(c.shoulder),
  vertical_grip_reach: (c) => rounded(c.shoulder + c.lift),
  arm_to_grip: (c) => rounded(c.arm),
  standoff: (c) => rounded(c.standOff),
  max_depth_at_shoulder: (c) => rounded(c.arm - c.standOff),
  top_d0: (c) => rounded(takeLimit(c, 0)),
  top_d100: (c) => rounded(takeLimit(c, 100)),
  top_d150: (c) => rounded(takeLimit(c, 150)),
  top_d200: (c) => rounded(takeLimit(c, 200)),
  eye: (c) => rounded(c.eye),
  see_d0: (c) => rounded(seeLine(c, 0)),
  see_d150: (c) => rounded(seeLine(c, 150)),
  see_d300: (c) => rounded(seeLine(c, 300)),
  two_hand_top_axilla: (c) => rounded(c.axilla),
  knuckle_low: (c) => rounded(c.shoulder - c.arm),
  body_mass_kg: (c) => rounded(massOf(c), 1),
  mass_10pct_kg: (c) => rounded(massOf(c) / 10, 2),
};

describe('model outputs, row for row', () => {
  it('has every column of the fixture', () => {
    const known = ['age_years', 'sex', 'percentile', 'mode', ...Object.keys(column)];
    expect(Object.keys(outputs[0] ?? {})).toEqual(known);
    expect(outputs.length).toBeGreaterThan(100);
  });
  it.each(outputs.map((row) => [`${row.age_years} ${row.sex} P${row.percentile} ${row.mode}`, row] as const))('%s', (_, row) => {
    const child = childModel({
      months: Number(row.age_years) * 12,
      percentile: Number(row.percentile),
      sex: row.sex === 'F' ? 'girl' : 'boy',
      mode: row.mode === 'combined' ? 'combined' : 'stature',
    });
    if (!child) throw new Error('no child');
    const got = Object.fromEntries(Object.entries(column).map(([name, figure]) => [name, figure(child)]));
    expect(got).toEqual(Object.fromEntries(Object.keys(column).map((name) => [name, row[name]])));
  });
});

describe('worked by hand, step by step', () => {
  const byHand = (months: number, percentile: number, sex: 'girl' | 'boy', mode: 'stature' | 'combined') => {
    const child = childModel({ months, percentile, sex, mode });
    if (!child) throw new Error('no child');
    return child;
  };
  const top = (child: ChildModel, depth: number) => Math.round(takeLimit(child, depth) ?? Number.NaN);

  it('a girl of 3.0 years at percentile 5', () => {
    const girl = byHand(36, 5, 'girl', 'stature');
    expect(girl.stature).toBeCloseTo(875.3, 1);
    expect(girl.shoulder).toBeCloseTo(668.9, 1);
    expect(girl.lift).toBeCloseTo(322.4, 0);
    expect(girl.arm).toBeCloseTo(319.5, 1);
    expect(girl.standOff).toBeCloseTo(103.8, 1);
    expect(girl.eye).toBeCloseTo(778.5, 1);
    expect(girl.axilla).toBeCloseTo(617.9, 1);
    expect([0, 100, 150, 200].map((d) => top(girl, d))).toEqual([924, 867, 815, 719]);
    expect(takeLimit(girl, 216)).toBeNull();
    expect([0, 150].map((d) => Math.round(seeLine(girl, d)))).toEqual([751, 710]);
    expect(massOf(girl)).toBeCloseTo(11.6, 1);
  });
  it('the same girl, reach at the percentile', () => {
    const girl = byHand(36, 5, 'girl', 'combined');
    expect(girl.shoulder / (0.73749 + 0.009844 * 3 - 0.0003236 * 9)).toBeCloseTo(864.4, 1);
    expect([0, 100, 150].map((d) => top(girl, d))).toEqual([912, 855, 801]);
  });
  it('a boy of 6.0 years at percentile 50', () => {
    const boy = byHand(72, 50, 'boy', 'stature');
    expect(boy.stature).toBeCloseTo(1153.9, 1);
    expect(boy.shoulder).toBeCloseTo(905.7, 1);
    expect(boy.lift).toBeCloseTo(448.9, 1);
    expect(boy.arm).toBeCloseTo(425.0, 1);
    expect(boy.standOff).toBeCloseTo(135.9, 1);
    expect(boy.eye).toBeCloseTo(1041.9, 0);
    expect([0, 150].map((d) => top(boy, d))).toEqual([1281, 1188]);
    expect([0, 150].map((d) => Math.round(seeLine(boy, d)))).toEqual([1006, 965]);
    expect(massOf(boy)).toBeCloseTo(20.7, 1);
  });
  it.each([
    [36, 912, 855, 778],
    [48, 994, 938, 839],
    [60, 1077, 1023, 900],
    [108, 1387, 1336, 1125],
  ])('against the advisory: the girl of %i months', (months, atEdge, atHundred, eye) => {
    const girl = byHand(months, 5, 'girl', 'combined');
    expect([top(girl, 0), top(girl, 100), Math.round(girl.eye)]).toEqual([atEdge, atHundred, eye]);
  });
  it('says nothing of children below the tables', () => {
    expect(childModel({ months: 23, percentile: 5 })).toBeNull();
  });
});

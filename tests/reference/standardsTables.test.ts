import { describe, expect, it } from 'vitest';
import { accessibleRoutes, manoeuvringSpaces } from '#model/standards/accessibleRoutes.ts';
import { advisoryReach } from '#model/standards/advisoryReach.ts';
import { aisles } from '#model/standards/aisles.ts';
import * as ratio from '#model/standards/childRatios.ts';
import { deductionMatrix, floorCategories } from '#model/standards/deductionMatrix.ts';
import { fixtureCounts } from '#model/standards/fixtureCounts.ts';
import { furnitureSizes } from '#model/standards/furnitureSizes.ts';
import { ruleSetOf, ruleSets } from '#model/standards/ruleSets.ts';
import { sources, sourceText } from '#model/standards/sources.ts';
import * as space from '#model/standards/spacePerChild.ts';
import { index, indexRow } from '#tests/support/standardsIndex.ts';

// Every figure against the index of published standards (document, clause and edition of each row stand there).
const values = (id: string) => indexRow(id).values;
const rowsOf = (id: string) => values(id).rows as Record<string, unknown>[];

describe('routes and clear spaces, ADA Standards 2010', () => {
  it('A01, A02, A05 to A09', () => {
    const { routeWidth, pinch, turningCircle, turningT, clearFloor, alcove, doorway } = accessibleRoutes;
    expect(values('A01')).toEqual({ clear_width_min_mm: routeWidth });
    expect(values('A02')).toEqual({
      pinch_width_min_mm: pinch.width,
      pinch_length_max_mm: pinch.length,
      between_pinches_length_min_mm: pinch.apart,
      between_pinches_width_min_mm: routeWidth,
    });
    expect(values('A05')).toEqual({ diameter_min_mm: turningCircle });
    expect(values('A06')).toEqual({
      square_min_mm: turningT.square,
      arm_and_base_width_min_mm: turningT.arm,
      arm_clear_each_side_min_mm: turningT.besideBase,
      base_clear_min_mm: turningT.alongBase,
    });
    // W22: 305 + 915 + 305 across, 915 + 610 deep.
    expect(turningT.besideBase * 2 + turningT.arm).toBe(turningT.square);
    expect(turningT.arm + turningT.alongBase).toBe(turningT.square);
    expect(values('A07')).toEqual({ width_min_mm: clearFloor.width, length_min_mm: clearFloor.length });
    expect(values('A08')).toEqual({
      forward_width_min_mm: alcove.forward.width,
      forward_if_depth_over_mm: alcove.forward.ifDeeper,
      parallel_width_min_mm: alcove.parallel.width,
      parallel_if_depth_over_mm: alcove.parallel.ifDeeper,
    });
    expect(values('A09')).toMatchObject({
      clear_width_min_mm: doorway.width,
      deep_opening_over_mm: doorway.deepOver,
      deep_opening_width_min_mm: doorway.deepWidth,
    });
  });
  it('A10, line by line', () => {
    const asIndexed = manoeuvringSpaces.map((s) => ({
      approach: s.approach,
      side: s.side,
      depth_mm: s.depth,
      ...(s.besideLatch !== undefined && { beside_latch_mm: s.besideLatch }),
      ...(s.besideHinge !== undefined && { beside_hinge_mm: s.besideHinge }),
      ...(s.besideLatchWithCloser !== undefined && { beside_latch_if_closer_and_latch_mm: s.besideLatchWithCloser }),
      ...(s.depthWithCloser !== undefined && {
        [s.approach === 'hinge' ? 'depth_if_closer_and_latch_mm' : 'depth_if_closer_mm']: s.depthWithCloser,
      }),
      ...(s.isFromMemory && { status: 'memory' }),
    }));
    expect(asIndexed).toEqual(rowsOf('A10'));
  });
  it('A15, the advisory bands', () => {
    const asIndexed = advisoryReach.map((b) => ({
      ages: `${b.fromMonths / 12}-${b.toMonths / 12 - 1}`,
      high_max_mm: b.high,
      low_min_mm: b.low,
    }));
    expect(asIndexed).toEqual(rowsOf('A15'));
  });
});

it('B08 to B11, aisles', () => {
  expect(values('B08')).toEqual({ clear_width_min_mm: aisles.business.width, nonpublic_under_50_mm: aisles.business.nonPublic });
  expect(values('B09')).toEqual({ rule: 'B10', nonpublic_under_50_mm: aisles.classroomNonPublic });
  expect(values('B10')).toEqual({
    general_mm: aisles.corridor.width,
    under_50_served_mm: aisles.corridor.underFifty,
    group_e_100_or_more_mm: aisles.corridor.schoolHundredOrMore,
  });
  expect(values('B11')).toEqual({ seat_allowance_mm: aisles.seatAllowance });
});

it('D01, sizes of chairs and tables (EN 1729-1)', () => {
  const asIndexed = furnitureSizes.map((s) => ({
    mark: s.mark,
    stature_mm: s.stature,
    popliteal_mm: s.popliteal,
    seat_mm: s.seat,
    table_mm: s.table,
    ...(s.isFromMemory && { status: 'memory' }),
  }));
  expect(asIndexed).toEqual(rowsOf('D01').map(({ ages: _, ...rest }) => rest));
});

it('D10, children per toilet and basin', () => {
  const where: Record<string, string> = {
    'us-california': 'California',
    'us-new-york': 'New York nursery schools',
    'us-maryland': 'Maryland',
    scotland: 'Scotland (over 2)',
    england: 'England (older guidance, over 2)',
    'us-texas': 'Texas',
  };
  const asIndexed = Object.entries(fixtureCounts).map(([id, f]) => ({
    where: where[id],
    per_toilet: f.perToilet,
    ...(f.perBasin !== null && { per_basin: f.perBasin }),
    ...(f.isFromMemory && { status: 'memory' }),
  }));
  // Oregon has a figure of its own shape and is no rule set here.
  expect(asIndexed).toEqual(rowsOf('D10').filter((r) => r.where !== 'Oregon'));
});

describe('space per child, every C row', () => {
  it.each([
    ['C01', space.spaceEngland],
    ['C03', space.spaceScotland],
    ['C05', space.spaceWales],
  ])('%s, by age', (id, table) => {
    expect(table.source).toBe(id);
    expect(table.rows.map((r) => r.m2)).toEqual(rowsOf(id).map((r) => r.m2));
  });
  it('C01: "3 to 5" runs to under 72 months', () => {
    expect(space.spaceEngland.rows.map((r) => [r.fromMonths, r.toMonths])).toEqual([
      [0, 24],
      [24, 36],
      [36, 72],
    ]);
  });
  it('C07, by service', () => {
    const rows = Object.values(space.spaceIreland).flatMap((table) => {
      const roomMax = 'roomMax' in table ? { room_max: table.roomMax } : {};
      return table.rows.map((r) => ({ ages: `${r.fromMonths / 12}-${r.toMonths / 12}`, m2: r.m2, ...roomMax }));
    });
    expect(rows).toEqual(rowsOf('C07').map(({ service: _, ...rest }) => rest));
  });
  it.each([
    [space.spaceCalifornia, 35],
    [space.spaceNewYork, 35],
    [space.spaceTexas, 30],
    [space.spaceFlorida, 35],
    [space.spaceMassachusetts, 35],
    [space.spaceWashington, 35],
    [space.spaceMaryland, 35],
    [space.spaceMontana, 35],
    [space.spaceCfoc, 42],
  ])('$source: square feet, exact, and the rounded m² of the index', (table, squareFeet) => {
    const [row] = table.rows;
    const printed = values(table.source);
    expect(row?.sqFt).toBe(squareFeet);
    expect((row?.m2 ?? 0) / 0.09290304).toBeCloseTo(squareFeet, 12);
    expect(Number(row?.m2.toFixed(3))).toBe(printed.m2 ?? printed.m2_min);
  });
  it('C23 and C26', () => {
    expect(space.spaceAustralia.rows.map((r) => r.m2)).toEqual([values('C23').m2]);
    expect(space.spaceNewZealand.rows.map((r) => r.m2)).toEqual([values('C26').m2]);
  });
});

describe('ratios, every C row', () => {
  it.each([
    ['C04', ratio.ratioScotland],
    ['C06', ratio.ratioWales],
    ['C21', ratio.ratioCfoc],
    ['C25', ratio.ratioAustralia],
  ])('%s', (id, table) => {
    expect(table.source).toBe(id);
    expect(table.rows.map((r) => r.childrenPerAdult)).toEqual(rowsOf(id).map((r) => r.children_per_adult));
    expect(table.rows.map((r) => r.groupMax)).toEqual(rowsOf(id).map((r) => r.group_max));
  });
  it('C02', () => {
    const [baby, two, three] = ratio.ratioEngland.rows;
    expect([baby?.childrenPerAdult, two?.childrenPerAdult, three?.childrenPerAdult, three?.withQualified, 30]).toEqual(
      rowsOf('C02').map((r) => r.children_per_adult),
    );
  });
  it('C08', () => {
    const all = [...ratio.ratioIreland['day-care'].rows, ...ratio.ratioIreland.sessional.rows];
    expect(all.map((r) => ({ ages: `${r.fromMonths / 12}-${r.toMonths / 12}`, children_per_adult: r.childrenPerAdult }))).toEqual(
      rowsOf('C08').map(({ service: _, ...rest }) => rest),
    );
  });
  it('C10', () => {
    const [infant, preschool, school] = ratio.ratioCalifornia.rows;
    expect(values('C10')).toEqual({
      children_per_teacher: preschool?.alone,
      with_aide: preschool?.withAide,
      with_qualified_aide_preschool: preschool?.withQualifiedAide,
      infants_per_teacher: infant?.alone,
      schoolage_per_teacher: school?.alone,
      schoolage_with_aide: school?.withAide,
    });
  });
});

describe('what is deducted', () => {
  const named: Record<string, keyof typeof deductionMatrix> = {
    England: 'england',
    'Wales (day care)': 'wales',
    California: 'california',
    'New York (nursery)': 'newYork',
    Texas: 'texas',
    Florida: 'florida',
    Massachusetts: 'massachusetts',
    'Washington State': 'washington',
    Maryland: 'maryland',
    Michigan: 'michigan',
    Colorado: 'colorado',
    Montana: 'montana',
    'Caring for Our Children': 'cfoc',
    'Australia (Victoria reading)': 'australia',
    'New Zealand': 'newZealand',
  };
  it('knows every category and every jurisdiction of the index', () => {
    expect(floorCategories).toEqual(index.deduction_matrix.categories);
    expect(Object.keys(index.deduction_matrix.by_jurisdiction)).toEqual(Object.keys(named));
  });
  it.each(Object.entries(named))('%s', (jurisdiction, key) => {
    expect(deductionMatrix[key]).toEqual(index.deduction_matrix.by_jurisdiction[jurisdiction]?.codes);
  });
  it('each rule set takes the row of its own jurisdiction', () => {
    const byId: Record<string, string> = {
      england: 'England',
      wales: 'Wales (day care)',
      'us-california': 'California',
      'us-new-york': 'New York (nursery)',
      'us-texas': 'Texas',
      'us-florida': 'Florida',
      'us-massachusetts': 'Massachusetts',
      'us-washington': 'Washington State',
      'us-maryland': 'Maryland',
      'us-montana': 'Montana',
      'us-cfoc': 'Caring for Our Children',
      australia: 'Australia (Victoria reading)',
      'new-zealand': 'New Zealand',
    };
    for (const set of ruleSets) {
      const row = index.deduction_matrix.by_jurisdiction[byId[set.id] ?? ''];
      if (!row) expect(Object.values(set.deductions), set.id).toEqual(floorCategories.map(() => '?'));
      else {
        expect(set.deductions, set.id).toEqual(row.codes);
        expect(row.rules.split(', '), set.id).toContain(set.deductionSource);
      }
    }
    expect(ruleSetOf('nowhere')).toBeUndefined();
  });
});

describe('sources in words', () => {
  it('agree with the index, row for row', () => {
    for (const row of index.rows) {
      const source = sources[row.id];
      expect(source, row.id).toMatchObject({ document: row.document, jurisdiction: row.jurisdiction, status: row.status });
      expect([source?.clause, source?.edition], row.id).toEqual([row.clause, row.edition].map((text) => (text === '-' ? '' : text)));
    }
  });
  it('read as people say them', () => {
    expect(sourceText('A01')).toBe('ADA Standards for Accessible Design, 403.5.1, 2010, USA (federal)');
    expect(sourceText('class rule')).toBe('Class rule');
    expect(sourceText('common practice')).toBe('Common practice, no source');
    expect(sourceText('B13')).toMatch(/from memory$/);
    expect(sourceText('B01')).toMatch(/read second-hand$/);
    expect(sourceText('no such row')).toBe('no such row');
    expect(sourceText('constructor')).toBe('constructor');
  });
  it.each(['S1917', 'M1912', 'H1914', 'E1917', 'CDC2000', 'UM-HSRI-77-17'])('%s is known', (key) => expect(sourceText(key)).not.toBe(key));
});

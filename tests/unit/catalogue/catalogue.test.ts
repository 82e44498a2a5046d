import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { areaCode, areaLetters, areaName } from '#model/catalogue/areas.ts';
import { catalogueById, catalogueMaterials, catalogueNote, cataloguePairs, fromCatalogue } from '#model/catalogue/catalogue.ts';
import { material } from '#model/schema/material.ts';
import { catalogueModule, cataloguePath } from '#tests/support/catalogue/generateCatalogue.ts';
import { readMaterialsSource } from '#tests/support/catalogue/source.ts';

const source = readMaterialsSource();

describe('the catalogue', () => {
  it('is generated anew whenever its table changes (npm run generate)', () => {
    const kept = readFileSync(resolve(import.meta.dirname, '../../..', cataloguePath), 'utf8');
    expect(kept).toBe(catalogueModule());
  });

  it('holds all 136 materials of the table under unique ids', () => {
    expect(source.materials).toHaveLength(136);
    expect(catalogueMaterials.map((m) => m.id)).toEqual(source.materials.map((m) => m.id));
    expect(catalogueById.size).toBe(136);
  });

  it('is in the shape of the format: the schema changes nothing', () => {
    for (const entry of catalogueMaterials) expect(material.parse(structuredClone(entry))).toEqual(entry);
  });

  it.each(source.materials)('$id carries the figures of the table', (row) => {
    const made = catalogueById.get(row.id);
    expect(made).toMatchObject({
      name: row.name,
      area: row.area,
      strand: row.strand,
      after: row.prerequisites,
      width: row.dims_mm?.w ?? null,
      depth: row.dims_mm?.d ?? null,
      height: row.dims_mm?.h ?? null,
      mass: row.mass_kg,
      smallest: row.smallest_mm,
      work: row.work_place,
      mat: row.mat_mm && { width: row.mat_mm.w, depth: row.mat_mm.d },
      fromMonths: row.age_from_months,
      toMonths: row.age_to_months,
      smallParts: row.choking_under3,
      control: row.control_of_error,
      mode: row.mode,
      pieces: row.pieces,
      stands: row.dims_mm ? 'own' : 'none',
    });
    expect(made?.isolates).toEqual(row.isolates === 'none' ? [] : [row.isolates]);
    expect(Object.keys(made?.afterSure ?? {}).sort()).toEqual([...row.prerequisites].sort());
  });

  it('claims nothing of what is carried: no source tells', () => {
    for (const m of catalogueMaterials) expect([m.hands, m.carried, m.heaviest]).toEqual([null, null, null]);
  });

  it('knows every prerequisite and every stated pair', () => {
    for (const m of catalogueMaterials) for (const id of m.after) expect(catalogueById.has(id), `${m.id} after ${id}`).toBe(true);
    for (const [before, after] of cataloguePairs) expect([catalogueById.has(before), catalogueById.has(after)]).toEqual([true, true]);
  });

  it('goes in no circle: prerequisites, steps and stated pairs together', () => {
    const before = new Map<string, Set<string>>(catalogueMaterials.map((m) => [m.id, new Set(m.after)]));
    for (const [first, then] of cataloguePairs) before.get(then)?.add(first);
    for (const u of catalogueMaterials)
      for (const v of catalogueMaterials)
        if (u.area === v.area && u.strand === v.strand && (u.step ?? 0) < (v.step ?? 0)) before.get(v.id)?.add(u.id);
    let left = [...before.keys()];
    for (let round = 0; round < 200 && left.length > 0; round++) {
      const open = new Set(left);
      left = left.filter((id) => [...(before.get(id) ?? [])].some((other) => open.has(other)));
    }
    expect(left).toEqual([]);
  });

  it('gives a step to every material, in the direction of its prerequisites', () => {
    for (const m of catalogueMaterials) {
      expect(m.step).toBeGreaterThan(0);
      for (const id of m.after) {
        const first = catalogueById.get(id);
        if (first?.strand === m.strand) expect(first.step ?? 0, `${id} before ${m.id}`).toBeLessThan(m.step ?? 0);
      }
    }
  });

  it('calls a step published only where the handbooks tell the order', () => {
    const steps = (strand: string) => catalogueMaterials.filter((m) => m.strand === strand).map((m) => [m.id, m.step, m.sure.step]);
    expect(steps('sight: dimension')).toEqual([
      ['se-cyl-diam', 1, 'published'],
      ['se-cyl-all', 2, 'published'],
      ['se-cyl-height', 3, 'published'],
      ['se-cyl-inverse', 3, 'common practice'],
      ['se-cyl-combined', 4, 'common practice'],
      ['se-tower', 4, 'published'],
      ['se-broad-stair', 5, 'published'],
      ['se-long-stair', 6, 'published'],
      ['se-knobless', 5, 'common practice'],
    ]);
    // The 1912 text lists ten frames without an order of ease.
    for (const [, , sure] of steps('care of the person: dressing frames')) expect(sure).toBe('common practice');
  });

  it('makes a material of the class from an entry', () => {
    const made = fromCatalogue('se-tower', 'm7');
    expect(made).toMatchObject({ id: 'm7', catalogue: 'se-tower', after: ['se-cyl-height', 'pl-mat-roll'], state: 'out' });
    expect(made.afterSure).toEqual({ 'se-cyl-height': 'published', 'pl-mat-roll': 'common practice' });
    expect(() => fromCatalogue('no-such', 'm8')).toThrow('no-such');
    expect(catalogueNote('se-tower')?.source).toContain('M1912');
    expect(catalogueNote('no-such')).toBeNull();
  });
});

describe('the areas', () => {
  it('draw every material of the catalogue with its letters, art apart', () => {
    const letters = new Set(catalogueMaterials.map((m) => areaCode(m.area, m.strand)));
    expect([...letters].sort()).toEqual(['AR', 'CU', 'LA', 'MA', 'PL', 'SE']);
    expect(areaName('practical-life')).toBe('Practical life');
  });

  it('take the first letters of an area of the class', () => {
    expect(areaCode('woodwork')).toBeNull();
    expect([areaLetters('woodwork'), areaLetters('é'), areaLetters(''), areaLetters('language')]).toEqual(['WO', 'É', '--', 'LA']);
    expect(areaName('woodwork')).toBe('woodwork');
  });
});

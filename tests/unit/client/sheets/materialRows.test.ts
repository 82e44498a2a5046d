import { describe, expect, it } from 'vitest';
import { fitOptions } from '#client/front/fitOptions.ts';
import { ownValue } from '#client/front/ownValue.ts';
import { countTrays } from '#client/lists/ListFooter.tsx';
import { checksBySubject } from '#client/lists/trayChecks.ts';
import { isMeant } from '#client/sheets/materials/findMaterials.ts';
import { type FitInWords, fitInWords } from '#client/sheets/materials/fitInWords.ts';
import { fromCatalogueHere } from '#client/sheets/materials/fromCatalogueHere.ts';
import { type RowContext, rowSections } from '#client/sheets/materials/materialRows.ts';
import { sureValues } from '#client/sheets/materials/materialWords.ts';
import { neighboursOf } from '#client/sheets/materials/neighbours.ts';
import { sayCounts } from '#client/sheets/materials/sayCounts.ts';
import type { Report } from '#model/analysis/report.ts';
import { catalogueById, catalogueMaterials } from '#model/catalogue/catalogue.ts';
import type { Finding } from '#model/findings/finding.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Material } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { shelfRoom } from '../front/shelf.ts';

const scene = shelfRoom(
  [
    ['a', 'top', 0, 300, 3],
    ['b', 'top', 350, 300, 1],
    ['c', 'low', 0, 300, 2],
  ],
  {
    materials: [
      { id: 'a', name: 'Spindle box', area: 'mathematics', strand: 'counting', step: 3, width: 300 },
      { id: 'b', name: 'Número rods', area: 'mathematics', strand: 'counting', step: 1, width: 300 },
      { id: 'c', name: 'Sandpaper numerals', area: 'mathematics', strand: 'counting', step: 2, width: 300 },
      { id: 'd', name: 'Bead frame', area: 'mathematics', strand: 'counting', step: 15, width: 300 },
      { id: 'e', name: 'Snake game', area: 'mathematics', strand: 'counting', width: 900 },
      { id: 'f', name: 'Unmeasured', area: 'language', strand: 'reading' },
      { id: 'g', name: 'Wanted thing', state: 'wanted', width: 100 },
    ],
  },
);
const finding = (subject: string, severity: Finding['severity'], message: string, leftReason: string | null = null): Finding => ({
  key: `${subject}${message}`,
  rule: 'reach/take',
  messageKey: 'high',
  outcome: 'problem',
  severity,
  subjects: [subject],
  message,
  why: '',
  sources: [],
  missing: [],
  leftReason,
});
const report: Report = {
  format: 'lowshelf.report',
  version: 1,
  classroom: 'x',
  arrangement: 'a1',
  answers: {},
  findings: [finding('b', 'note', 'a note'), finding('b', 'must', 'too high'), finding('c', 'must', 'left as it is', 'on purpose')],
  measures: {},
};
const context: RowContext = {
  scene,
  moves: new Map([['a', { piece: 's1', side: 'front', level: 'low', x: 350 }]]),
  checks: checksBySubject(report),
  fits: new Map<string, FitInWords>([
    ['d', { say: 'fits shelf 1, low', verb: 'place it' }],
    ['e', { say: 'no gap wide enough', verb: 'make room' }],
  ]),
};
const all = { area: null, typed: '', order: 'step' as const };
const shown = (filter: Parameters<typeof rowSections>[1]) =>
  rowSections(context, filter).map(({ title, rows }) => [title, rows.map(({ id }) => id)]);

describe('the table of materials', () => {
  it('says what is graver than its step before the step', () => {
    const high = { ...finding('s1', 'must', 'Top board: too high.'), trays: ['a'] };
    const checks = checksBySubject({ ...report, findings: [high] });
    const rows = rowSections({ ...context, checks }, all).flatMap((section) => section.rows);
    expect(rows.find(({ id }) => id === 'a')).toMatchObject({
      mark: 'must',
      check: 'out of reach; also out of step, belongs on shelf 1',
      verb: 'put in step',
    });
  });

  it('begins with the table, ends with what is not out, and goes by step within a strand', () => {
    expect(shown(all)).toEqual([
      ['On the table, not placed yet', ['d', 'e', 'f']],
      ['Counting', ['b', 'c', 'a']],
      ['Not out: in store, to mend, to make or wanted', ['g']],
    ]);
  });

  it('goes by shelf as a child reads it', () => {
    expect(shown({ ...all, order: 'shelf' })[1]).toEqual(['Shelf 1 · Counting', ['a', 'b', 'c']]);
  });

  it('goes by checks, gravest first', () => {
    expect(shown({ ...all, order: 'checks' }).slice(1, 4)).toEqual([
      ['Must be mended', ['b']],
      ['Should be mended', ['a']],
      ['Nothing to mend', ['c']],
    ]);
  });

  it('says where each stands, what is wrong and what can be done', () => {
    const rows = new Map(rowSections(context, all).flatMap((section) => section.rows.map((row) => [row.id, row] as const)));
    expect(rows.get('a')).toMatchObject({ stands: 'shelf 1, top · 1st', board: 640, verb: 'put in step', mark: 'should' });
    expect(rows.get('b')).toMatchObject({ check: 'out of reach', mark: 'must', verb: null });
    expect(rows.get('c')).toMatchObject({ check: 'in step', mark: null });
    expect(rows.get('d')).toMatchObject({ check: 'fits shelf 1, low', verb: 'place it', mark: 'on-the-table' });
    expect(rows.get('e')).toMatchObject({ check: 'no gap wide enough', verb: 'make room' });
    expect(rows.get('f')).toMatchObject({ check: 'its width is not known', verb: null });
    expect(rows.get('g')).toMatchObject({ stands: 'wanted' });
  });

  it('keeps to an area', () => {
    expect(shown({ ...all, area: 'LA' })).toEqual([['On the table, not placed yet', ['f']]]);
  });
});

describe('where a thing on the table fits, in words', () => {
  const room = (width: number, beside: number) => {
    const made = shelfRoom([['long', 'top', 0, beside, 1]], {
      materials: [
        { id: 'long', name: 'Long', strand: 's', step: 1, width: beside, depth: 250, height: 80 },
        { id: 'new', name: 'New', strand: 's', step: 2, width, depth: 250, height: 80 },
      ],
    });
    return fitInWords(made, fitOptions(made, 'new'));
  };

  it('names the place that takes it as it is', () => {
    expect(room(300, 300)).toEqual({ say: 'fits shelf 1, top', verb: 'place it' });
  });

  it('gives the reason in one line, and no verb, where no board takes it', () => {
    // Panels of 20 mm: the bare boards of the shelf of 1.40 m are 1.36 m wide.
    expect(room(1460, 300)).toEqual({
      say: 'Fits no board: 0.10 m too narrow with all trays side by side on the nearest, shelf 1, middle.',
      verb: null,
    });
  });
});

describe('how many there are', () => {
  it('accounts for every material', () => {
    const counted = shelfRoom([['a', 'top', 0, 300, 1]], {
      materials: [
        { id: 'a', name: 'A', width: 300 },
        { id: 'b', name: 'B', width: 300 },
        { id: 'c', name: 'C', stands: 'none' },
        { id: 'd', name: 'D', stands: 'none' },
        { id: 'e', name: 'E', state: 'store' },
      ],
    });
    expect(sayCounts(counted)).toBe('1 placed, 1 on the table, 2 need no shelf, 1 not out');
  });

  it('does not look for a place for what stands on the floor', () => {
    const materials = [
      { id: 'a', name: 'A', width: 300 },
      { id: 'b', name: 'B', width: 300 },
      { id: 'broom', name: 'Sweeping', width: 300, height: 900, work: 'standing' as const },
    ];
    const counted = shelfRoom([['a', 'top', 0, 300, 1]], { materials });
    expect(sayCounts(counted)).toBe('1 placed, 1 on the table, 1 stands on the floor');
    expect(countTrays(counted.classroom, counted.arrangement)).toEqual({ out: 2, placed: 1, floor: 1 });
    const sections = rowSections({ scene: counted, moves: new Map(), checks: new Map(), fits: new Map() }, all);
    expect(sections.map(({ title, rows }) => [title, rows.map(({ name, stands, mark }) => [name, stands, mark])])).toContainEqual([
      'Stands on the floor, not on a board',
      [['Sweeping', 'on the floor', null]],
    ]);
  });

  it('leaves out what there is none of, but for the two that are always asked', () => {
    const counted = shelfRoom([['a', 'top', 0, 300, 1]], { materials: [{ id: 'a', name: 'A', width: 300 }] });
    expect(sayCounts(counted)).toBe('1 placed, 0 on the table');
  });
});

describe('finding a material', () => {
  const spindles = {
    material: { id: 'a', name: 'Número: spindle box', step: 3, strand: 'numbers to ten', area: 'mathematics' },
    stands: 'shelf 7, top · 2nd Shelf 7',
  };
  it.each([
    ['spindle', true],
    ['BOX spin', true],
    ['numero', true],
    ['3', true],
    ['7', true],
    ['shelf 7', true],
    ['numbers to', true],
    ['', true],
    ['2', false],
    ['70', false],
    ['spindle cards', false],
  ])('"%s": %s', (typed, isFound) => {
    expect(isMeant(spindles, typed)).toBe(isFound);
  });
});

describe('before and after', () => {
  const steps = buildScene(
    plainRoom({
      materials: [
        { id: 'm1', name: 'First', catalogue: 'cat-1', strand: 's', step: 1 },
        { id: 'm2', name: 'Second', strand: 's', step: 2, after: ['cat-1', 'gone'], afterSure: { 'cat-1': 'published' } },
        { id: 'm3', name: 'Third', strand: 's', step: 3 },
        { id: 'm4', name: 'Third too', strand: 's', step: 3 },
      ],
    }),
  );
  const of = (id: string) => neighboursOf(steps, steps.materialById.get(id) as Material);

  it('names prerequisites, by the class or by the catalogue, and how sure they are', () => {
    expect(of('m2')).toMatchObject({ after: [{ id: 'm1', name: '1 First', sure: 'published' }], missing: ['gone'] });
    expect(of('m1').before).toEqual([{ id: 'm2', name: '2 Second', sure: 'published' }]);
  });

  it('else the nearest steps of its strand', () => {
    expect(of('m3').after.map(({ id }) => id)).toEqual(['m2']);
    expect(of('m2').before.map(({ id }) => id)).toEqual(['m3', 'm4']);
    expect(of('m4').before).toEqual([]);
  });
});

describe('values of the class', () => {
  it('are known as its own, and unknown again when taken out', () => {
    const material = {
      ...(plainRoom({ materials: [{ id: 'm', name: 'M', sure: { width: 'estimate', mass: 'estimate' } }] }).materials[0] as Material),
    };
    expect(ownValue(material, 'width', 320)).toEqual({ width: 320, sure: { width: 'own', mass: 'estimate' } });
    expect(ownValue(material, 'width', null)).toEqual({ width: null, sure: { mass: 'estimate' } });
  });
});

describe('adding from the catalogue', () => {
  const [first, second] = catalogueMaterials;
  if (!first || !second) throw new Error('the catalogue is not empty');

  it('gives each an id that is free here', () => {
    const here = plainRoom({ materials: [{ id: first.id, name: 'My own, by the same id' }] }).materials;
    const made = fromCatalogueHere(here, [first.id, second.id, 'unknown']);
    expect(made.map(({ id, catalogue }) => [id, catalogue])).toEqual([
      [`${first.id}-2`, first.id],
      [second.id, second.id],
    ]);
    expect(made[0]?.name).toBe(catalogueById.get(first.id)?.name);
  });

  it('leaves out what the class has already, under whatever id', () => {
    const here = plainRoom({ materials: [{ id: 'mine', name: 'Mine', catalogue: first.id }] }).materials;
    expect(fromCatalogueHere(here, [first.id, first.id])).toEqual([]);
  });
});

describe('how sure the catalogue is', () => {
  it('is said of each value', () => {
    // The figures and their marks are the catalogue's own, from M1912 ch. XX and estimates.
    const teeth = catalogueById.get('pl-brush-teeth') as Material;
    expect(sureValues(teeth, 'metric')).toEqual([
      { say: 'step 3', sure: 'published' },
      { say: 'from age 3½', sure: 'estimate' },
      { say: 'to 5½', sure: 'estimate' },
      { say: '0.30 m wide, 0.20 m deep, 0.15 m high', sure: 'estimate' },
      { say: '0.50 kg', sure: 'estimate' },
    ]);
    for (const material of catalogueMaterials)
      for (const { say, sure } of sureValues(material, 'metric')) expect([material.id, say, sure !== '']).toEqual([material.id, say, true]);
  });

  it('is the same in the panel as in the order check: published where a chain of published steps tells it', () => {
    const three = ['pl-wash-hands', 'pl-wash-self', 'pl-brush-teeth'].map((id) => catalogueById.get(id) as Material);
    const scene = buildScene(plainRoom({ materials: three }));
    const later = neighboursOf(scene, three[2] as Material).after;
    expect(later.find(({ id }) => id === 'pl-wash-self')?.sure).toBe('published');
  });
});

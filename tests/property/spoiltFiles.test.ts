import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDocument } from '#model/document/openDocument.ts';
import { withTornEntries } from '#model/document/tornEntries.ts';
import { readClassroom, readClassroomFile } from '#model/schema/readFile.ts';
import { wrongAnswers, wrongRefusal } from '#tests/support/absurd/answersFor.ts';
import { furnished } from '#tests/support/furnished.ts';
import { patience, runs } from '#tests/support/runs.ts';

// Good files with a few values spoilt, by fast-check: read, or refused in plain words that say where; never a throw.
const spoilt = fc.constantFrom<unknown>(
  Number.NaN,
  Infinity,
  -Infinity,
  1e9,
  -1e9,
  1e308,
  0,
  -1,
  0.5,
  '12',
  'no number',
  '',
  'x'.repeat(3000),
  null,
  undefined,
  true,
  [],
  {},
  [[]],
  [null],
  { id: '__proto__' },
  'constructor',
);
const where = fc.array(fc.nat(40), { minLength: 1, maxLength: 7 });
type Spoil = readonly [number[], unknown];
const spoils = fc.array(fc.tuple(where, spoilt), { minLength: 1, maxLength: 3 });

type Tree = Record<string, unknown>;
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && Object.keys(value).length > 0;

/** Walks down by the numbers, as far as there is something to walk into, and puts the value there. */
function spoil(file: Tree, [way, value]: Spoil): void {
  let here = file;
  let key = '';
  for (const step of way) {
    const keys = Object.keys(here);
    key = keys[step % keys.length] ?? '';
    const next = here[key];
    if (!isTree(next)) break;
    if (step === way.at(-1)) break;
    here = next;
  }
  here[key] = structuredClone(value);
}

const spoiltFile = (list: readonly Spoil[]): Tree => {
  const file = JSON.parse(JSON.stringify(furnished())) as Tree;
  for (const one of list) spoil(file, one);
  return file;
};

describe('spoilt files', () => {
  it('values of another kind, not numbers, beyond any room', { timeout: patience }, () => {
    let refused = 0;
    let opened = 0;
    fc.assert(
      fc.property(spoils, (list) => {
        const read = readClassroom(spoiltFile(list));
        if (!read.ok) {
          refused++;
          expect(wrongRefusal(read.problems)).toEqual([]);
          const torn = read.torn && withTornEntries(read.torn);
          if (!torn) return;
          // Opened all the same, each thing that cannot be read is named, and what is drawn can be judged.
          opened++;
          const document = createDocument(torn.classroom);
          expect(document.needsRepair().length).toBeGreaterThanOrEqual(torn.entries.length);
          if (opened % 10 === 0) expect(wrongAnswers(document.read(), false)).toEqual([]);
        } else if (refused % 20 === 0) expect(wrongAnswers(read.classroom, false)).toEqual([]);
      }),
      { numRuns: runs(400, 14_000) },
    );
    expect(refused).toBeGreaterThan(runs(100, 3000));
    expect(opened).toBeGreaterThan(runs(1, 40));
  });

  it('text cut off, doubled, with signs and words in it', { timeout: patience }, () => {
    const text = JSON.stringify(furnished());
    const cut = fc.tuple(
      fc.nat(text.length),
      fc.nat(60),
      fc.constantFrom('', 'NaN', '1e999', '-', '"', '}', ',', ' ', '\u0000', '9'.repeat(400)),
    );
    fc.assert(
      fc.property(fc.array(cut, { minLength: 1, maxLength: 2 }), (cuts) => {
        const spoiltText = cuts.reduce((now, [at, length, put]) => now.slice(0, at) + put + now.slice(at + length), text);
        const read = readClassroomFile(spoiltText);
        if (!read.ok) expect(wrongRefusal(read.problems)).toEqual([]);
      }),
      { numRuns: runs(400, 10_000) },
    );
  });

  it('the same values written into a shared document: set aside, and the rest is judged', { timeout: patience }, () => {
    const entity = fc.constantFrom('classroom', 'materials', 'arrangements', 'openings', 'fixtures', 'notes');
    const field = fc.constantFrom(
      'x',
      'y',
      'width',
      'depth',
      'height',
      'rotation',
      'kind',
      'name',
      'from',
      'offset',
      'levels',
      'sides',
      'access',
      'room',
    );
    let analysed = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(entity, fc.nat(5), field, spoilt), { minLength: 1, maxLength: 4 }), (writes) => {
        const document = createDocument(furnished());
        for (const [root, at, key, value] of writes) writeTo(document.doc.getMap<unknown>(root), at, key, value);
        const classroom = document.read();
        if (analysed++ % 8 === 0) expect(wrongAnswers(classroom, false)).toEqual([]);
        document.destroy();
      }),
      { numRuns: runs(100, 4000) },
    );
  });
});

interface Mapped {
  get(key: string): unknown;
  set(key: string, value: unknown): unknown;
  keys(): IterableIterator<string>;
}
const isMapped = (value: unknown): value is Mapped => typeof value === 'object' && value !== null && 'keys' in value && 'set' in value;

/** Into the nth thing of a map, or of the map in it. */
function writeTo(map: Mapped, at: number, key: string, value: unknown): void {
  const keys = [...map.keys()];
  const inner = map.get(keys[at % Math.max(1, keys.length)] ?? '');
  const pieces = isMapped(inner) ? inner.get('pieces') : null;
  if (isMapped(pieces) && at % 2 === 0) writeTo(pieces, at, key, value);
  else if (isMapped(inner)) inner.set(key, value);
  else map.set(key, value);
}

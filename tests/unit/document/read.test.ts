import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { exportClassroom } from '#model/document/exportClassroom.ts';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { UnfitValue } from '#model/document/plain.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { furnished } from '../../support/furnished.ts';

const at = <T>(list: readonly T[] | undefined, index: number): T => {
  const entry = list?.[index];
  if (entry === undefined) throw new Error(`nothing at ${index}`);
  return entry;
};
const arrangement = (classroom: Classroom) => at(classroom.arrangements, 0);
const raw = (doc: Y.Doc, root: string, ...keys: string[]): Y.Map<unknown> =>
  keys.reduce((map, key) => map.get(key) as Y.Map<unknown>, doc.getMap<unknown>(root));

describe('reading', () => {
  it('gives the same object until something changes', () => {
    const document = createDocument(furnished());
    expect(document.read()).toBe(document.read());
  });

  it('replaces only what changed', () => {
    const document = createDocument(furnished());
    const before = document.read();
    document.commands.movePiece('a1', 's2', { x: 2222, y: 300 });
    const after = document.read();
    expect(at(arrangement(after).pieces, 1)).toMatchObject({ id: 's2', x: 2222, y: 300 });
    expect(at(arrangement(after).pieces, 1)).not.toBe(at(arrangement(before).pieces, 1));
    expect(at(arrangement(after).pieces, 0)).toBe(at(arrangement(before).pieces, 0));
    expect(at(arrangement(after).pieces, 1).levels).toBe(at(arrangement(before).pieces, 1).levels);
    expect(arrangement(after).placements).toBe(arrangement(before).placements);
    expect(at(after.arrangements, 1)).toBe(at(before.arrangements, 1));
    expect(after.materials).toBe(before.materials);
    expect(after.room).toBe(before.room);
    expect(after.children).toBe(before.children);
    expect(after.access).toBe(before.access);
    expect(after.notes).toBe(before.notes);
    expect(after.enrolment).toBe(before.enrolment);
  });

  it('leaves arrangements alone when a material changes', () => {
    const document = createDocument(furnished());
    const before = document.read();
    document.commands.changeMaterial('m1', { mass: 2 });
    const after = document.read();
    expect(at(after.materials, 0).mass).toBe(2);
    expect(at(after.materials, 1)).toBe(at(before.materials, 1));
    expect(after.arrangements).toBe(before.arrangements);
  });

  it('keeps the same lists when a setting changes', () => {
    const document = createDocument(furnished());
    const before = document.read();
    document.commands.changeClass({ access: { ...before.access, routeWidth: 900 } });
    const after = document.read();
    expect(after.access.routeWidth).toBe(900);
    expect(after.floorWork).toBe(before.floorWork);
    expect(after.room).toBe(before.room);
    expect(after.arrangements).toBe(before.arrangements);
  });

  it('is frozen all the way down', () => {
    const classroom = createDocument(furnished()).read();
    const loose: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (typeof value !== 'object' || value === null) return;
      if (!Object.isFrozen(value)) loose.push(path);
      for (const [key, entry] of Object.entries(value)) walk(entry, `${path}.${key}`);
    };
    walk(classroom, 'classroom');
    expect(loose).toEqual([]);
  });

  it('reads a document that has not come yet as an empty room that needs no repair', () => {
    const document = openDocument(new Y.Doc());
    expect(document.read().room.corners).toHaveLength(4);
    expect(document.read().arrangements).toHaveLength(1);
    expect(document.needsRepair()).toEqual([]);
    const reread = readClassroom(JSON.parse(JSON.stringify(document.read())));
    expect(reread.ok).toBe(true);
  });
});

describe('what does not parse', () => {
  it('is set aside, told and kept', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'arrangements', 'a1', 'pieces', 's1').set('width', 'wide');
    expect(arrangement(document.read()).pieces.map((piece) => piece.id)).toEqual(['s2', 't1']);
    expect(document.needsRepair()).toEqual([{ path: 'arrangements.a1.pieces.s1.width', found: '"wide"', expected: 'a number' }]);
    expect(raw(document.doc, 'arrangements', 'a1', 'pieces', 's1').get('width')).toBe('wide');
    expect(document.commands.changePiece('a1', 's1', { width: 900 })).toBe(true);
    expect(document.needsRepair()).toEqual([]);
    expect(at(arrangement(document.read()).pieces, 0)).toMatchObject({ id: 's1', width: 900, name: 'Sensorial A' });
  });

  it('takes a single board with it, not the shelf', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'arrangements', 'a1', 'pieces', 's1', 'levels', 'l1').set('surface', -5);
    expect(at(arrangement(document.read()).pieces, 0).levels.map((level) => level.id)).toEqual(['l2']);
    expect(document.needsRepair()).toMatchObject([{ path: 'arrangements.a1.pieces.s1.levels.l1.surface', found: '-5' }]);
  });

  it('falls back to the default for a single setting', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'classroom', 'access').set('routeWidth', 'broad');
    raw(document.doc, 'classroom', 'access').set('turning', 1600);
    expect(document.read().access).toMatchObject({ routeWidth: 915, turning: 1600 });
    expect(document.needsRepair()).toMatchObject([{ path: 'classroom.access.routeWidth', found: '"broad"' }]);
  });

  it('refuses reserved keys without touching any prototype', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'materials').set('__proto__', new Y.Map([['name', 'polluted']]));
    raw(document.doc, 'materials', 'm1').set('constructor', { polluted: true });
    raw(document.doc, 'classroom', 'asked').set('__proto__', 'count');
    const classroom = document.read();
    expect(classroom.materials.map((material) => material.id)).toEqual(['m2']);
    expect(document.needsRepair().map(({ path }) => path)).toEqual([
      'classroom.asked.__proto__',
      'materials.m1.constructor',
      'materials.__proto__',
    ]);
    expect(Object.getPrototypeOf(classroom.asked)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('refuses a file with a reserved key, with nothing written', () => {
    const classroom = { ...furnished(), 'x-own': { deep: [JSON.parse('{"constructor": 1}')] } } as Classroom;
    expect(() => createDocument(classroom)).toThrow(UnfitValue);
    expect(() => createDocument(classroom)).toThrow('classroom.x-own.deep[0].constructor');
  });

  it('stands with the other shapes a peer may send', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'materials').set('m9', 'no thing');
    raw(document.doc, 'materials').set('m8', new Y.Array());
    raw(document.doc, 'materials', 'm2').set('words', new Y.Text('no list'));
    document.doc.getMap('arrangements').set('a7', 12);
    raw(document.doc, 'arrangements', 'a1').set('placements', 'none');
    document.doc.getArray('corners').push(['no corner', 7, null]);
    const classroom = document.read();
    expect(classroom.materials.map(({ id }) => id)).toEqual(['m1']);
    expect(arrangement(classroom).placements).toEqual([]);
    expect(classroom.room.corners).toHaveLength(4);
    expect(document.needsRepair().map(({ path }) => path)).toEqual([
      'corners[4]',
      'corners[5]',
      'corners[6]',
      'materials.m2.words',
      'materials.m8',
      'materials.m9',
      'arrangements.a1.placements',
      'arrangements.a7',
    ]);
  });

  it('goes along in an exported file that can be read', () => {
    const document = createDocument(furnished());
    raw(document.doc, 'arrangements', 'a1', 'pieces', 's1').set('width', 'wide');
    const file = exportClassroom(document) as Classroom & { needsRepair?: unknown };
    expect(readClassroom(JSON.parse(JSON.stringify(file))).ok).toBe(true);
    expect(file.needsRepair).toMatchObject([
      { path: 'arrangements.a1.pieces.s1.width', entry: { name: 'Sensorial A', width: 'wide', levels: { l1: { surface: 640 } } } },
    ]);
  });
});

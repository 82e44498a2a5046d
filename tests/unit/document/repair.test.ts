import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { exportClassroom } from '#model/document/exportClassroom.ts';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import type { ClassroomDocument } from '#model/document/types.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { furnished } from '../../support/furnished.ts';

/** Two tablets that leave the same classroom and meet again after both did something. */
function apart(doOne: (d: ClassroomDocument) => void, doOther: (d: ClassroomDocument) => void) {
  const one = createDocument(furnished());
  const other = openDocument(new Y.Doc());
  Y.applyUpdate(other.doc, Y.encodeStateAsUpdate(one.doc));
  doOne(one);
  doOther(other);
  Y.applyUpdate(other.doc, Y.encodeStateAsUpdate(one.doc, Y.encodeStateVector(other.doc)));
  Y.applyUpdate(one.doc, Y.encodeStateAsUpdate(other.doc, Y.encodeStateVector(one.doc)));
  expect(other.read()).toEqual(one.read());
  expect(other.needsRepair()).toEqual(one.needsRepair());
  const file = readClassroom(JSON.parse(JSON.stringify(exportClassroom(one))));
  expect(file.ok).toBe(true);
  return one;
}
const arrangement = (document: ClassroomDocument) => document.read().arrangements[0];
const on = (piece: string, level: string, x: number) => ({ piece, level, side: 'front' as const, x, y: 0, turned: false });

describe('after a merge', () => {
  it('two who move one tray leave one tray, at one of the two places whole', () => {
    const merged = apart(
      (d) => {
        d.commands.place('a1', { material: 'm1', ...on('s1', 'l2', 500) });
        d.commands.place('a1', { material: 'm1', ...on('s1', 'l1', 501) });
      },
      (d) => d.commands.place('a1', { material: 'm1', ...on('s2', 'l1', 7) }),
    );
    const places = arrangement(merged)?.placements.filter(({ material }) => material === 'm1');
    expect(places).toHaveLength(1);
    expect([on('s1', 'l1', 501), on('s2', 'l1', 7)]).toContainEqual(
      Object.fromEntries(Object.entries(places?.[0] ?? {}).filter(([key]) => key !== 'material')),
    );
  });

  it('two who move one shelf leave it at one of the two places, not at a third', () => {
    const merged = apart(
      (d) => d.commands.movePiece('a1', 's1', { x: 100, y: 200 }),
      (d) => d.commands.movePiece('a1', 's1', { x: 900, y: 300 }),
    );
    const { x, y } = arrangement(merged)?.pieces[0] ?? {};
    expect([
      [100, 200],
      [900, 300],
    ]).toContainEqual([x, y]);
  });

  it('two who change two fields of one shelf both win', () => {
    const merged = apart(
      (d) => d.commands.changePiece('a1', 's1', { anchored: true }),
      (d) => d.commands.movePiece('a1', 's1', { x: 1, y: 2 }),
    );
    expect(arrangement(merged)?.pieces[0]).toMatchObject({ anchored: true, x: 1, y: 2 });
  });

  it('a tray put on a shelf that somebody took away is on the table, and told as nothing broken', () => {
    const merged = apart(
      (d) => d.commands.putAwayPiece('a1', 's2'),
      (d) => d.commands.place('a1', { material: 'm1', ...on('s2', 'l1', 7) }),
    );
    expect(arrangement(merged)?.placements.map(({ material }) => material)).toEqual(['m2']);
    expect(merged.read().materials).toHaveLength(2);
    expect(merged.needsRepair()).toEqual([]);
    merged.undo.takeBack();
    expect(arrangement(merged)?.placements).toContainEqual({ material: 'm1', ...on('s2', 'l1', 7) });
  });

  it('a tray that is moved while its shelf is taken away keeps its new place', () => {
    const merged = apart(
      (d) => d.commands.putAwayPiece('a1', 's1'),
      (d) => d.commands.place('a1', { material: 'm1', ...on('s2', 'l1', 7) }),
    );
    expect(arrangement(merged)?.placements).toEqual([{ material: 'm1', ...on('s2', 'l1', 7) }]);
  });

  it('a tray on a board that is gone is on the table', () => {
    const merged = apart(
      (d) => d.commands.removeLevel('a1', 's1', 'l1'),
      (d) => d.commands.movePiece('a1', 's1', { x: 5, y: 5 }),
    );
    expect(arrangement(merged)?.placements.map(({ material }) => material)).toEqual(['m2']);
  });

  it('a material that stood with one that is gone stands on its own', () => {
    const merged = apart(
      (d) => d.commands.removeMaterial('m1'),
      (d) => d.commands.changeMaterial('m2', { mass: 1 }),
    );
    expect(merged.read().materials).toMatchObject([{ id: 'm2', stands: 'own', mass: 1 }]);
  });

  it('a seat of a table that is gone belongs to none', () => {
    const merged = apart(
      (d) => d.commands.putAwayPiece('a1', 't1'),
      (d) => d.commands.addPiece('a1', { kind: 'seat', x: 1, y: 1, width: 300, depth: 300, table: 't1' }),
    );
    expect(arrangement(merged)?.pieces.at(-1)).toMatchObject({ kind: 'seat', table: null });
  });

  it('both sides of a walk that two people set give each shelf side once', () => {
    const merged = apart(
      (d) =>
        d.commands.setWalk('a1', [
          { piece: 's2', side: 'front' },
          { piece: 's1', side: 'front' },
        ]),
      (d) => d.commands.setWalk('a1', [{ piece: 's2', side: 'front' }]),
    );
    const keys = arrangement(merged)?.walk?.map(({ piece, side }) => `${piece}/${side}`) ?? [];
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain('s2/front');
  });

  it('of two current arrangements one is current, and never one that is gone', () => {
    const merged = apart(
      (d) => d.commands.setCurrent('a2'),
      (d) => d.commands.removeArrangement('a2'),
    );
    expect(merged.read().current).toBe('a1');
    expect(merged.read().arrangements.map(({ id }) => id)).toEqual(['a1']);
  });

  it('an empty arrangement stands in when every one was taken away', () => {
    const merged = apart(
      (d) => d.commands.removeArrangement('a1'),
      (d) => d.commands.removeArrangement('a2'),
    );
    expect(merged.read().arrangements).toEqual([{ id: 'empty', name: '', pieces: [], placements: [] }]);
    expect(merged.read().current).toBe('empty');
    expect(merged.needsRepair()).toMatchObject([{ path: 'arrangements', found: 'none' }]);
    const added = merged.commands.addArrangement('Anew');
    expect(merged.read().arrangements.map(({ id }) => id)).toEqual([added]);
  });

  it('a plain rectangle stands in for walls of fewer than three corners, and doors that hang on none are told', () => {
    const without = (d: ClassroomDocument, ids: string[]) =>
      d.commands.setCorners(d.read().room.corners.filter(({ id }) => !ids.includes(id)));
    const merged = apart(
      (d) => without(d, ['c1']),
      (d) => {
        without(d, ['c2']);
      },
    );
    expect(merged.read().room.corners).toHaveLength(4);
    expect(merged.needsRepair().map(({ path }) => path)).toEqual(['corners', 'openings.d1.from']);
    expect(merged.read().room.openings).toEqual([]);
    expect(exportClassroom(merged).room.openings).toHaveLength(1);
  });

  it('a corner that two people move in the list is there once', () => {
    const turned = (d: ClassroomDocument) =>
      d.commands.setCorners([...d.read().room.corners.slice(1), ...d.read().room.corners.slice(0, 1)]);
    const merged = apart(turned, turned);
    expect(
      merged
        .read()
        .room.corners.map(({ id }) => id)
        .sort(),
    ).toEqual(['c1', 'c2', 'c3', 'c4']);
  });

  it('two who tape two walls before they meet both keep their lengths', () => {
    const wall = (from: string, length: number) => ({ survey: { walls: [{ from, length, turn: 90 }], diagonals: [] } });
    const merged = apart(
      (d) => d.commands.changeRoom(wall('c1', 6000)),
      (d) => d.commands.changeRoom(wall('c2', 5000)),
    );
    expect(
      merged
        .read()
        .room.survey?.walls.map(({ length }) => length)
        .sort(),
    ).toEqual([5000, 6000]);
  });

  it('two who both begin the list of watching places both keep theirs', () => {
    const merged = apart(
      (d) => d.commands.setWatch('a1', [{ id: 'w1', x: 1, y: 1, eye: 1100 }]),
      (d) => d.commands.setWatch('a1', [{ id: 'w2', x: 2, y: 2, eye: 1100 }]),
    );
    expect(
      arrangement(merged)
        ?.watch?.map(({ id }) => id)
        .sort(),
    ).toEqual(['w1', 'w2']);
  });
});

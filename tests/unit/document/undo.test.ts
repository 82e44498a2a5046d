import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { sharedOrigin } from '#model/document/origins.ts';
import type { Change, ClassroomDocument } from '#model/document/types.ts';
import { furnished } from '../../support/furnished.ts';

/** Two people on one classroom; `meet` brings both to the same state. */
function two() {
  const one = createDocument(furnished());
  const other = openDocument(new Y.Doc());
  const meet = () => {
    Y.applyUpdate(other.doc, Y.encodeStateAsUpdate(one.doc, Y.encodeStateVector(other.doc)), sharedOrigin);
    Y.applyUpdate(one.doc, Y.encodeStateAsUpdate(other.doc, Y.encodeStateVector(one.doc)), sharedOrigin);
  };
  meet();
  return { one, other, meet };
}
const piece = (document: ClassroomDocument, id: string) => document.read().arrangements[0]?.pieces.find((p) => p.id === id);

describe('taking back', () => {
  it('takes back own steps one by one, however fast they came', () => {
    const { one } = two();
    const before = one.read();
    one.commands.movePiece('a1', 's1', { x: 1, y: 1 });
    one.commands.movePiece('a1', 's1', { x: 2, y: 2 });
    one.undo.takeBack();
    expect(piece(one, 's1')).toMatchObject({ x: 1, y: 1 });
    one.undo.takeBack();
    expect(one.read()).toEqual(before);
    one.undo.doAgain();
    one.undo.doAgain();
    expect(piece(one, 's1')).toMatchObject({ x: 2, y: 2 });
    expect(one.undo.canDoAgain()).toBe(false);
  });

  it('takes a drag back as one step', () => {
    const { one } = two();
    one.commands.changePiece('a1', 's1', { name: 'A' });
    one.undo.beginStep();
    for (let x = 0; x < 30; x++) one.commands.movePiece('a1', 's1', { x, y: 5 });
    one.undo.endStep();
    one.commands.changePiece('a1', 's1', { name: 'B' });
    one.undo.takeBack();
    expect(piece(one, 's1')).toMatchObject({ name: 'A', x: 29 });
    one.undo.takeBack();
    expect(piece(one, 's1')).toMatchObject({ name: 'A', x: 900, y: 200 });
    one.undo.takeBack();
    expect(piece(one, 's1')).toMatchObject({ name: 'Sensorial A' });
  });

  it('never takes back what others did, nor the file that was read in', () => {
    const { one, other, meet } = two();
    expect(one.undo.canTakeBack()).toBe(false);
    other.commands.movePiece('a1', 's2', { x: 77, y: 77 });
    meet();
    expect(one.undo.canTakeBack()).toBe(false);
    one.undo.takeBack();
    expect(piece(one, 's2')).toMatchObject({ x: 77 });
  });

  it('leaves a later move of somebody else in place', () => {
    const { one, other, meet } = two();
    one.commands.movePiece('a1', 's1', { x: 10, y: 10 });
    meet();
    other.commands.movePiece('a1', 's1', { x: 20, y: 20 });
    meet();
    one.undo.takeBack();
    meet();
    expect(piece(one, 's1')).toMatchObject({ x: 20, y: 20 });
    expect(other.read()).toEqual(one.read());
  });

  it('tells where a change came from', () => {
    const { one, other, meet } = two();
    const seen: Change['from'][] = [];
    const stop = one.onChange(({ from }) => seen.push(from));
    one.commands.movePiece('a1', 's1', { x: 10, y: 10 });
    one.undo.takeBack();
    other.commands.movePiece('a1', 's2', { x: 20, y: 20 });
    meet();
    stop();
    one.commands.movePiece('a1', 's1', { x: 11, y: 10 });
    expect(seen).toEqual(['own', 'undo', 'others']);
  });
});

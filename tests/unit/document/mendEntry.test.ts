import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { createMender } from '#model/document/mendEntry.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { thingAt } from '#model/document/overwritten.ts';
import { furnished } from '../../support/furnished.ts';

/** A classroom in which somebody wrote what no file may hold. */
function spoilt(path: readonly string[], fields: Record<string, unknown>) {
  const document = createDocument(furnished());
  const thing = thingAt(document.doc, path);
  if (!thing) throw new Error(`there is no ${path.join('/')}`);
  for (const [key, value] of Object.entries(fields)) thing.set(key, value);
  const [problem, ...others] = document.needsRepair();
  if (!problem || others.length > 0) throw new Error(`one problem was meant: ${JSON.stringify(document.needsRepair())}`);
  return { document, problem, mender: createMender(document.doc) };
}
const PIECE = ['arrangements', 'a1', 'pieces', 's1'];

describe('an entry that does not parse', () => {
  it.each([
    [PIECE, { name: 7 }, 'name', 'drop'],
    [PIECE, { rotation: 'askew' }, 'rotation', 'drop'],
    [PIECE, { width: 'wide' }, 'width', 'figure'],
    [[...PIECE, 'levels', 'l1'], { surface: -5 }, 'surface', 'figure'],
    [['classroom', 'access'], { routeWidth: 'broad' }, 'routeWidth', 'drop'],
    [PIECE, { kind: 'sofa' }, 'kind', 'none'],
    [['corners', '[1]'], { x: 'left' }, 'x', 'figure'],
  ] as const)('%j %j: %s is mended by %s', (path, fields, field, by) => {
    const { document, problem, mender } = spoilt(path, fields);
    const mend = mender.mendOf(problem);
    expect(mend).toMatchObject({ thing: path, field, by });
    if (by === 'drop') expect(document.commands.takeOut(mend.thing, field)).toBe(true);
    if (by === 'figure') expect(document.commands.setBack(mend.thing, { [field]: { value: 800 } })).toBe(true);
    if (by === 'none') return;
    expect(document.needsRepair()).toEqual([]);
    document.undo.takeBack();
    expect(document.needsRepair()).toEqual([problem]);
  });

  it('is tried on a copy: looking changes nothing, and a figure that does not fit is told before it is written', () => {
    const { document, problem, mender } = spoilt(PIECE, { width: 'wide' });
    const before = Y.encodeStateAsUpdate(document.doc);
    expect(mender.takes(problem, -3)).toBe(false);
    expect(mender.takes(problem, 1200)).toBe(true);
    expect(Y.encodeStateAsUpdate(document.doc)).toEqual(before);
  });

  it('can be taken out whole, and brought back', () => {
    const { document, problem, mender } = spoilt(PIECE, { kind: 'sofa' });
    const { entry } = mender.mendOf(problem);
    expect(entry).toEqual({ path: ['arrangements', 'a1', 'pieces'], key: 's1' });
    if (entry) document.commands.takeOut(entry.path, entry.key);
    expect(document.needsRepair()).toEqual([]);
    expect(document.read().arrangements[0]?.pieces.map(({ id }) => id)).toEqual(['s2', 't1']);
    document.undo.takeBack();
    expect(document.needsRepair()).toEqual([problem]);
  });

  it('that is no thing at all, and a door whose corner is gone, are taken out', () => {
    const strange = spoilt(['openings'], { d9: 'a door' });
    expect(strange.mender.mendOf(strange.problem)).toMatchObject({ by: 'none', entry: { path: ['openings'], key: 'd9' } });
    expect(strange.document.commands.takeOut(['openings'], 'd9')).toBe(true);
    expect(strange.document.needsRepair()).toEqual([]);

    const document = createDocument(furnished());
    const [door] = document.read().room.openings;
    if (!door) throw new Error('the room has a door');
    thingAt(document.doc, ['openings', door.id])?.set('from', 'nowhere');
    const [problem] = document.needsRepair();
    if (!problem) throw new Error('that is a problem');
    const { by, entry } = createMender(document.doc).mendOf(problem);
    expect({ by, entry }).toEqual({ by: 'none', entry: { path: ['openings'], key: door.id } });
  });

  it('names nothing to take out where something lacks', () => {
    const document = createDocument(furnished());
    document.doc.getArray('corners').delete(1, 2);
    const problems = document.needsRepair();
    const lack = problems.find(({ path }) => path === 'corners');
    if (!lack) throw new Error('corners lack');
    expect(createMender(document.doc).mendOf(lack)).toMatchObject({ by: 'none', entry: null });
  });
});

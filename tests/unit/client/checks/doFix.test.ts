import { describe, expect, it } from 'vitest';
import { doFix } from '#client/checks/doFix.ts';
import { chosenOf } from '#client/checks/showFinding.ts';
import type { Session, View } from '#client/session/types.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { finding } from './finding.ts';

const room = plainRoom({
  pieces: [
    { id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1200, depth: 320, levels: [{ id: 'l1', surface: 300 }] },
    { id: 's2', kind: 'shelf', x: 3000, y: 1000, width: 1200, depth: 320 },
  ],
  materials: [{ id: 'm1', name: 'Pouring' }],
});

/** As much of a session as a fix uses, on a real document. */
function sessionOn(view: Partial<View> = {}) {
  const document = createDocument(room);
  const said: string[] = [];
  const changes: Partial<View>[] = [];
  const session = {
    document,
    commands: document.commands,
    undo: document.undo,
    classroom: () => document.read(),
    arrangement: () => document.read().arrangements[0],
    view: () => ({ finding: null, ...view }),
    setView: (change: Partial<View>) => changes.push(change),
    announce: (text: string) => said.push(text),
  } as unknown as Session;
  return { session, document, said, changes };
}

const fixed = finding({
  fix: {
    label: 'Do it: both shelves to the north',
    edits: [
      { do: 'move-piece', piece: 's1', x: 1000, y: 200 },
      { do: 'move-piece', piece: 's2', x: 3000, y: 200 },
    ],
  },
});

describe('Do it', () => {
  it('makes all edits in one step, which take back undoes, and says so', () => {
    const { session, document, said, changes } = sessionOn({ finding: fixed.key });
    const ys = () => document.read().arrangements[0]?.pieces.map((p) => p.y);
    expect(doFix(session, fixed)).toBe(true);
    expect(ys()).toEqual([200, 200]);
    expect(said).toEqual(['Done: both shelves to the north. Take back undoes it.']);
    expect(changes).toEqual([{ finding: null }]);
    document.undo.takeBack();
    expect(ys()).toEqual([1000, 1000]);
    expect(document.undo.canTakeBack()).toBe(false);
  });

  it('does nothing without a fix', () => {
    expect(doFix(sessionOn().session, finding())).toBe(false);
  });
});

describe('Show', () => {
  const scene = buildScene(room);
  it.each([
    [['s1'], { kind: 'piece', id: 's1' }],
    [['d1', 's1'], { kind: 'opening', id: 'd1' }],
    [['wall:c2'], { kind: 'wall', id: 'c2' }],
    [['c2'], { kind: 'corner', id: 'c2' }],
    [['m1'], { kind: 'tray', id: 'm1' }],
    [['l1'], { kind: 'piece', id: 's1' }],
    [['nowhere', 's2'], { kind: 'piece', id: 's2' }],
    [['classroom'], null],
  ] as const)('chooses for %j', (subjects, chosen) => {
    expect(chosenOf(subjects, scene)).toEqual(chosen);
  });
});

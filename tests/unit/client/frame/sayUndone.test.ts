import { beforeEach, expect, it, vi } from 'vitest';
import { doAgain, takeBack } from '#client/frame/takeBack.ts';
import { type PlanSession, planSession } from '../plan/planSession.ts';

let session: PlanSession;
const level = [{ id: 'l1', surface: 300 }];
const shelf = (id: string, x: number) =>
  ({ id, kind: 'shelf', x, y: 300, width: 1200, depth: 320, sides: ['front'], levels: level }) as const;

beforeEach(() => {
  session = planSession({
    arrangements: [
      {
        id: 'a1',
        name: 'As it stands',
        pieces: [shelf('s1', 1000), shelf('s2', 3000), { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600 }],
        placements: [
          { material: 'm1', piece: 's1', side: 'front', level: 'l1', x: 100 },
          { material: 'm2', piece: 's1', side: 'front', level: 'l1', x: 500 },
        ],
      },
      { id: 'a2', name: 'Open middle', pieces: [shelf('s1', 1000)] },
    ],
    materials: [
      { id: 'm1', name: 'Rods', width: 300, depth: 200 },
      { id: 'm2', name: 'Beads', width: 300, depth: 200 },
    ],
  });
});

/** The words are fetched when they are first wanted. */
const said = (words: string): Promise<void> => vi.waitFor(() => expect(session.said.at(-1)).toBe(words), { timeout: 15_000 });

type Commands = PlanSession['commands'];
const cases: readonly (readonly [string, (commands: Commands) => unknown, string, string])[] = [
  ['a table', (c) => c.movePiece('a1', 't1', { x: 2000, y: 3000 }), 'table T1 stands where it stood', 'table T1 is moved again'],
  ['a length', (c) => c.changePiece('a1', 's1', { width: 900 }), 'shelf 1 is as it was', 'shelf 1 is changed again'],
  ['a shelf and its trays', (c) => c.putAwayPiece('a1', 's1'), 'shelf 1 is there again', 'shelf 1 is gone again'],
  [
    'a shelf of another',
    (c) => c.movePiece('a2', 's1', { x: 2000, y: 300 }),
    'shelf 1, in “Open middle”, stands where it stood',
    'shelf 1, in “Open middle”, is moved again',
  ],
  [
    'a tray',
    (c) => c.place('a1', { material: 'm1', piece: 's2', side: 'front', level: 'l1', x: 0, y: 0, turned: false }),
    'Rods stands where it stood',
    'Rods is moved again',
  ],
  ['a tray put away', (c) => c.putAway('a1', 'm2'), 'Beads is there again', 'Beads is gone again'],
  [
    'a corner',
    (c) => c.moveCorner('c1', { x: -200, y: 0 }),
    'the shape of the room is as it was',
    'the shape of the room is changed again',
  ],
  ['the class', (c) => c.changeClass({ name: 'Maple' }), 'the class is as it was', 'the class is changed again'],
  ['a tick', (c) => c.changeMoveDay({ x: { y: 1 } }), 'the list of the move day is as it was', 'the list of the move day is changed again'],
];

it.each(cases)('says what was taken back and done again: %s', async (_name, change, back, again) => {
  change(session.commands);
  takeBack(session);
  await said(`Taken back: ${back}.`);
  doAgain(session);
  await said(`Done again: ${again}.`);
});

it('names the first of several, and says when there is nothing', async () => {
  session.undo.beginStep();
  session.commands.movePiece('a1', 's1', { x: 1100, y: 300 });
  session.commands.movePiece('a1', 's2', { x: 3100, y: 300 });
  session.commands.movePiece('a1', 't1', { x: 2000, y: 3000 });
  session.undo.endStep();
  takeBack(session);
  await said('Taken back: shelf 1 stands where it stood, and 2 more.');
  takeBack(session);
  expect(session.said.at(-1)).toMatch(/^Nothing of yours to take back since this page was opened/);
});

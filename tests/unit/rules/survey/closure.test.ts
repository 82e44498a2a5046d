import { closure } from '#model/rules/survey/closure.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Survey = NonNullable<NonNullable<PlainRoomChange['room']>['survey']>;
type Wall = NonNullable<Survey['walls']>[number];

/** The plain room's walls as taped, 6 x 5 m, with some of them changed. */
function walls(change: Readonly<Record<string, Partial<Wall>>> = {}): Wall[] {
  return [
    { from: 'c1', length: 6000, turn: 90, ...change.c1 },
    { from: 'c2', length: 5000, turn: 90, ...change.c2 },
    { from: 'c3', length: 6000, turn: 90, ...change.c3 },
    { from: 'c4', length: 5000, turn: 90, ...change.c4 },
  ];
}
const room = (survey: Survey, options?: Record<string, number>) =>
  plainRoom({ room: { survey }, ...(options && { options: { 'survey/closure': options } }) });
const diagonal = (length: number) => [{ from: 'c1', to: 'c3', length }];

testRule(closure, {
  fine: [
    { name: 'closed to the mm', classroom: room({ walls: walls() }) },
    { name: 'off by 20 mm', classroom: room({ walls: walls({ c3: { length: 5980 } }) }) },
    { name: 'a diagonal that agrees', classroom: room({ walls: walls(), diagonals: diagonal(7810) }) },
    { name: 'a diagonal against the drawn walls alone', classroom: room({ diagonals: diagonal(7829) }) },
    {
      name: 'an L that turns left once',
      classroom: plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 6000, y: 0 },
            { id: 'c3', x: 6000, y: 3000 },
            { id: 'c4', x: 4000, y: 3000 },
            { id: 'c5', x: 4000, y: 5000 },
            { id: 'c6', x: 0, y: 5000 },
          ],
          survey: {
            walls: [
              ...walls({ c2: { length: 3000 }, c3: { length: 2000, turn: -90 }, c4: { length: 2000 } }),
              { from: 'c5', length: 4000, turn: 90 },
              { from: 'c6', length: 5000, turn: 90 },
            ],
          },
        },
      }),
    },
    {
      name: 'the corners already lie where the spread puts them',
      // 40 mm missing along the first wall, spread over 21.96 m: c2 moves by 40 · 6/21.96, and so on.
      classroom: plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 6000 - (40 * 6000) / 21960, y: 0 },
            { id: 'c3', x: 6000 - (40 * 11000) / 21960, y: 5000 },
            { id: 'c4', x: 40 - (40 * 16960) / 21960, y: 5000 },
          ],
          survey: { walls: walls({ c3: { length: 5960 } }) },
        },
      }),
    },
    { name: 'a class that allows 50 mm', classroom: room({ walls: walls({ c3: { length: 5960 } }) }, { allowed: 50 }) },
    {
      name: 'turns within a degree each are shared out',
      classroom: room({ walls: walls({ c1: { turn: 91 }, c2: { turn: 91 } }) }, { allowed: 300 }),
    },
  ],
  problem: [
    {
      name: '40 mm short along the third wall: spread',
      classroom: room({ walls: walls({ c3: { length: 5960 } }) }),
      findings: [{ messageKey: 'open', severity: 'should', subjects: ['room'], measured: 40, needed: 20, fix: 'gone' }],
    },
    {
      name: 'along two walls: hypot(30, 40)',
      classroom: room({ walls: walls({ c3: { length: 5960 }, c4: { length: 5030 } }) }),
      findings: [{ messageKey: 'open', measured: 50, fix: 'gone' }],
    },
    {
      name: 'a room drawn the other way round: turns to the left',
      classroom: plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 0, y: 5000 },
            { id: 'c3', x: 6000, y: 5000 },
            { id: 'c4', x: 6000, y: 0 },
          ],
          survey: {
            walls: [
              { from: 'c1', length: 5000, turn: -90 },
              { from: 'c2', length: 6000, turn: -90 },
              { from: 'c3', length: 5000, turn: -90 },
              { from: 'c4', length: 5970, turn: -90 },
            ],
          },
        },
      }),
      findings: [{ messageKey: 'open', measured: 30, fix: 'gone' }],
    },
    {
      name: 'half a metre is a mistake, not spread',
      classroom: room({ walls: walls({ c3: { length: 5500 } }) }),
      findings: [{ messageKey: 'mistake', severity: 'should', measured: 500 }],
    },
    {
      name: 'a class that spreads even that',
      classroom: room({ walls: walls({ c3: { length: 5500 } }) }, { spreadable: 0.05 }),
      findings: [{ messageKey: 'open', measured: 500, fix: 'gone' }],
    },
    {
      name: 'a corner typed as turning the other way',
      classroom: room({ walls: walls({ c2: { turn: -90 } }), diagonals: diagonal(7810) }),
      findings: [{ messageKey: 'turns', severity: 'should' }],
    },
    {
      name: 'a class that wants turns to a tenth of a degree',
      classroom: room({ walls: walls({ c2: { turn: 91 } }) }, { turnError: 0.1 }),
      findings: [{ messageKey: 'turns' }],
    },
    {
      name: 'closed, but out of square: only the diagonal tells',
      classroom: room({ walls: walls(), diagonals: diagonal(7900) }),
      findings: [{ messageKey: 'diagonal', severity: 'should', measured: Math.hypot(6000, 5000), needed: 7900 }],
    },
  ],
  cannotTell: [
    {
      name: 'a wall that was not taped',
      classroom: room({ walls: walls().slice(0, 3) }),
      findings: [{ messageKey: 'wallMissing', severity: 'should', missing: ['tape the wall from corner c4'] }],
    },
    {
      name: 'a diagonal to a corner that is gone',
      classroom: room({ diagonals: [{ from: 'c1', to: 'c9', length: 7810 }] }),
      findings: [{ messageKey: 'gone', missing: ['tape again what began or ended at corner c9'] }],
    },
  ],
  doesNotApply: [
    { name: 'nothing taped', classroom: plainRoom() },
    { name: 'an empty list', classroom: room({}) },
  ],
});

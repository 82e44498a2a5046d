import { pocket } from '#model/rules/sight/pocket.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

/** A shelf 1600 long whose back stands `gap` off the south wall. Common practice, no source: the figures are geometry. */
const gap = (off: number, change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 5000 - off - 160, width: 1600, depth: 320 }], ...change });

/** Two blocks that leave a lane `wide` between them, shut at the south wall, 1000 deep. */
const lane = (wide: number) =>
  plainRoom({
    pieces: [
      { id: 'k1', kind: 'other', x: 1500 - wide / 2, y: 4500, width: 3000, depth: 1000 },
      { id: 'k2', kind: 'other', x: 4500 + wide / 2, y: 4500, width: 3000, depth: 1000 },
    ],
  });

/** Two rows at an angle, 420 apart where they are nearest, shut the south of the room off. */
const gate = plainRoom({
  pieces: [
    { id: 'k1', kind: 'other', x: 1395, y: 3000, width: 2790, depth: 300 },
    {
      id: 'k2',
      kind: 'other',
      x: 4605,
      y: 3000,
      width: 2790,
      depth: 300,
      outline: [
        [-1395, 0],
        [1395, -150],
        [1395, 150],
      ],
    },
  ],
});

testRule(pocket, {
  fine: [
    { name: 'an empty room: corners are no pockets', classroom: plainRoom() },
    { name: 'a gap of 290: no child fits', classroom: gap(290) },
    { name: 'a gap of 500: an adult fits', classroom: gap(500) },
    { name: 'small patches left out', classroom: gap(400, { options: { 'sight/pocket': { least: 2 } } }) },
    { name: 'a slighter adult', classroom: gap(400, { options: { 'sight/pocket': { adult: 400 } } }) },
    { name: 'a larger child', classroom: gap(400, { options: { 'sight/pocket': { child: 450 } } }) },
  ],
  problem: [
    {
      name: 'a blind lane, 400 wide and 1000 deep',
      classroom: lane(400),
      findings: [{ messageKey: 'pocket', severity: 'note', measured: 0.4 }],
    },
    {
      name: 'a blind lane that a child just fits into',
      classroom: lane(300),
      findings: [{ messageKey: 'pocket', measured: 0.3 }],
    },
    {
      name: 'a passage of 400 between the walls themselves',
      classroom: plainRoom({
        room: {
          corners: (
            [
              [0, 0],
              [6000, 0],
              [6000, 5000],
              [3200, 5000],
              [3200, 6000],
              [2800, 6000],
              [2800, 5000],
              [0, 5000],
            ] as const
          ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
        },
      }),
      findings: [{ messageKey: 'pocket', subjects: ['room'], measured: 0.4 }],
    },
    {
      name: 'a corner of the room behind a gap of 420',
      classroom: gate,
      findings: [{ messageKey: 'pocket', severity: 'note' }],
    },
    {
      name: 'behind a shelf, open at both ends',
      classroom: gap(400),
      findings: [{ messageKey: 'pocket', subjects: ['s1'], measured: 1.6 * 0.4 }],
    },
  ],
  cannotTell: [
    {
      name: 'no door',
      classroom: plainRoom({ room: { openings: [] } }),
      findings: [{ messageKey: 'door', severity: 'note', subjects: ['room'], missing: ['where the doors and passages are'] }],
    },
    {
      name: 'the walls cross',
      classroom: plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 6000, y: 0 },
            { id: 'c3', x: 0, y: 5000 },
            { id: 'c4', x: 6000, y: 5000 },
          ],
        },
      }),
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
  ],
  doesNotApply: [{ name: 'a child taken as wide as an adult', classroom: gap(400, { options: { 'sight/pocket': { child: 500 } } }) }],
});

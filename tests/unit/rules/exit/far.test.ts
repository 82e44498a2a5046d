import { far } from '#model/rules/exit/far.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// B05, B13, B15, B16 (part of the figures is from memory); the rooms are ours, walks reckoned by hand.
const d1 = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'out-left', exit: true } as const;
const d2 = { ...d1, id: 'd2', from: 'c3' } as const;
/** A hall `long` by 5 m with the plain room's door. */
const hall = (long: number, change: PlainRoomChange = {}) =>
  plainRoom({
    ...change,
    room: {
      corners: (
        [
          [0, 0],
          [long, 0],
          [long, 5000],
          [0, 5000],
        ] as const
      ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
      ...change.room,
    },
  });
const england = { exitRules: 'england-adb' } as const;
const ibc = { exitRules: 'us-ibc' } as const;
/** The hinge is on the left seen from inside, at the wall's end in its direction: the clear opening runs from 450 to 1300. */
const MIDDLE = 875;
const straight = (long: number): number => Math.hypot(long - MIDDLE, 5000);
/** A screen from the north wall, south of which only 1000 are free, 2000 east of the west wall. */
const screen = { id: 'k1', kind: 'other', x: 2500, y: 2000, width: 1000, depth: 4000 } as const;
const roundScreen = Math.hypot(2000 - MIDDLE, 4000) + 1000 + Math.hypot(3000, 4000);
const own = (oneExit: number) => ({ options: { 'exit/far': { oneExit } } });

testRule(far, {
  fine: [
    { name: 'a small room', classroom: plainRoom(england) },
    { name: 'B16: under 18 m', classroom: hall(18_000, england) },
    { name: 'B05: under 22.86 m', classroom: hall(23_000, ibc) },
    { name: 'B16: 45 m where there are two', classroom: hall(60_000, { ...england, room: { openings: [d1, d2] } }) },
    { name: 'B13: 76.2 m with sprinklers', classroom: hall(140_000, { ...ibc, sprinklered: true, room: { openings: [d1, d2] } }) },
    { name: 'a class that allows more', classroom: hall(20_000, { ...england, ...own(25_000) }) },
    {
      name: 'floor that nobody gets to is left out',
      classroom: plainRoom({ ...england, ...own(5200), pieces: [{ ...screen, y: 2500, depth: 5000 }] }),
    },
  ],
  problem: [
    {
      name: 'B16: over 18 m with one exit',
      classroom: hall(20_000, england),
      findings: [{ messageKey: 'far', severity: 'should', subjects: ['room'], measured: straight(20_000), needed: 18_000 }],
    },
    {
      name: 'B05: over 22.86 m with one exit, sprinklers or not',
      classroom: hall(24_000, { ...ibc, sprinklered: true }),
      findings: [{ messageKey: 'far', measured: straight(24_000), needed: 22_860 }],
    },
    {
      name: 'a second exit that furniture shuts off does not count',
      classroom: hall(20_000, {
        ...england,
        room: { openings: [d1, d2] },
        pieces: [{ id: 'k1', kind: 'other', x: 18_500, y: 4000, width: 3000, depth: 2000 }],
      }),
      findings: [{ messageKey: 'far', needed: 18_000 }],
    },
    {
      name: 'round a screen to the corner behind it',
      classroom: plainRoom({ ...england, ...own(5000), pieces: [screen] }),
      findings: [{ messageKey: 'far', measured: roundScreen, needed: 5000 }],
    },
    {
      name: 'a gap of 290 is no way: round the other end',
      classroom: plainRoom({
        ...england,
        ...own(5000),
        pieces: [{ ...screen, y: 2290, depth: 4000 }],
      }),
      findings: [{ messageKey: 'far', measured: Math.hypot(2000 - MIDDLE, 4290) + 1000 + Math.hypot(3000, 4290) }],
    },
    {
      name: 'two exits, the class allows 3 m',
      classroom: plainRoom({ ...england, room: { openings: [d1, d2] }, options: { 'exit/far': { severalExits: 3000 } } }),
      findings: [{ messageKey: 'far', needed: 3000 }],
    },
  ],
  cannotTell: [
    {
      name: 'no rules chosen',
      classroom: plainRoom(),
      findings: [{ messageKey: 'rules', missing: ['whose rules count for the ways out'] }],
    },
    {
      name: 'no exit marked',
      classroom: plainRoom({ ...england, room: { openings: [{ ...d1, exit: false }] } }),
      findings: [{ messageKey: 'exits', severity: 'should', missing: ['which doors lead out of the building or to a safe way out'] }],
    },
    {
      name: 'the exit is shut off',
      classroom: plainRoom({ ...england, pieces: [{ id: 'k1', kind: 'other', x: 900, y: 300, width: 1800, depth: 600 }] }),
      findings: [{ messageKey: 'shutOff', missing: ['a free walk to door d1'] }],
    },
    {
      name: 'the walls cross',
      classroom: plainRoom({
        ...england,
        room: {
          corners: (
            [
              [0, 0],
              [6000, 0],
              [0, 5000],
              [6000, 5000],
            ] as const
          ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
        },
      }),
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
  ],
});

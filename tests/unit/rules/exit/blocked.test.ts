import { blocked } from '#model/rules/exit/blocked.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The International Building Code (B01, B02, B04, B07) and Approved Document B (B17); the rooms are ours.
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const england = { exitRules: 'england-adb' } as const;
const ibc = { exitRules: 'us-ibc' } as const;
const shelf: Piece = { id: 's1', kind: 'shelf', name: 'Sensorial A', x: 3000, y: 4840, width: 1200, depth: 320, rotation: 180 };
/** A screen from the west wall that leaves `gap` at the east wall, between the door and the shelf. */
const screen = (gap: number): Piece => ({
  id: 's2',
  kind: 'other',
  name: 'screen',
  x: (6000 - gap) / 2,
  y: 2500,
  width: 6000 - gap,
  depth: 320,
});
const room = (gap: number, change: PlainRoomChange) => plainRoom({ pieces: [shelf, screen(gap)], ...change });
const children = (count: number, fromMonths = 36) => ({ groups: [{ id: 'g1', fromMonths, toMonths: 48, count }] });
const d1 = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'out-left', exit: true } as const;
const d2 = { id: 'd2', kind: 'door', from: 'c3', offset: 4500, width: 900, clear: 850, swing: 'out-left', exit: true } as const;
const nearDoor: Piece = { ...shelf, id: 's3', y: 1000, rotation: 0 };
/** A table south of a screen from the east: its chairs leave 650 at the west wall, the table itself 1133. */
const seated: Piece[] = [
  { ...shelf, x: 5000 },
  { id: 't1', kind: 'table', name: 'table 1', x: 1433, y: 3000, width: 1200, depth: 600, rotation: 90, seatSides: { front: 2 } },
  { id: 'k1', kind: 'other', x: 3866.5, y: 3000, width: 4267, depth: 600 },
];

testRule(blocked, {
  fine: [
    { name: 'an empty room', classroom: plainRoom(england) },
    { name: 'B17: 750 up to 60 persons', classroom: room(750, england) },
    { name: 'B17: 58 children and two adults are still 60', classroom: room(750, { ...england, children: children(58) }) },
    { name: 'B07: 32 in', classroom: room(812.8, ibc) },
    { name: 'a narrower figure set by the class', classroom: room(600, { ...england, options: { 'exit/blocked': { width: 600 } } }) },
    {
      name: 'the way leads to the other exit',
      classroom: plainRoom({ ...england, room: { openings: [d1, d2] }, pieces: [shelf, nearDoor, screen(700)] }),
    },
  ],
  problem: [
    {
      name: 'B17: 749 for 10 persons',
      classroom: room(749, england),
      findings: [{ messageKey: 'narrow', severity: 'must', subjects: ['s2'], measured: 749, needed: 750 }],
    },
    {
      name: 'B17: 61 persons need 850',
      classroom: room(800, { ...england, children: children(59) }),
      findings: [{ messageKey: 'narrow', measured: 800, needed: 850 }],
    },
    {
      name: 'B07: under 32 in',
      classroom: room(812, ibc),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 812, needed: 813 }],
    },
    {
      name: 'B04: 200 children and two adults need 5.1 each',
      classroom: room(1000, { ...ibc, children: children(200) }),
      findings: [{ messageKey: 'narrow', measured: 1000, needed: 202 * 5.1 }],
    },
    {
      name: 'a wider figure set by the class is taken as it is',
      classroom: room(899.9, { ...ibc, options: { 'exit/blocked': { width: 900 } } }),
      findings: [{ messageKey: 'narrow', measured: 899.9, needed: 900 }],
    },
    {
      name: 'no way at all',
      classroom: room(0, england),
      findings: [{ messageKey: 'none', severity: 'must', subjects: ['s1'], measured: 0, needed: 750 }],
    },
    {
      name: 'only while children sit at the table',
      classroom: plainRoom({ ...england, pieces: seated }),
      findings: [{ messageKey: 'chairs', severity: 'must', measured: 650, needed: 750 }],
    },
    {
      name: 'one of two exits is hard to get to',
      classroom: plainRoom({ ...england, room: { openings: [d1, d2] }, pieces: [nearDoor, screen(700)] }),
      findings: [{ messageKey: 'exit', severity: 'must', subjects: ['d2'], measured: 700, needed: 750 }],
    },
    {
      name: 'one of two exits cannot be got to',
      classroom: plainRoom({ ...england, room: { openings: [d1, d2] }, pieces: [nearDoor, screen(0)] }),
      findings: [{ messageKey: 'noneToExit', subjects: ['d2'], measured: 0 }],
    },
  ],
  cannotTell: [
    {
      name: 'no rules chosen',
      classroom: room(500, {}),
      findings: [{ messageKey: 'rules', severity: 'must', subjects: ['room'], missing: ['whose rules count for the ways out'] }],
    },
    {
      name: 'no exit marked',
      classroom: room(500, { ...england, room: { openings: [{ ...d1, exit: false }] } }),
      findings: [{ messageKey: 'exits', missing: ['which doors lead out of the building or to a safe way out'] }],
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

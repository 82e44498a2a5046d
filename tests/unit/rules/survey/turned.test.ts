import { turned } from '#model/rules/survey/turned.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const shelf = (change: Partial<Piece> = {}): Piece => ({
  id: 's1',
  kind: 'shelf',
  name: 'A',
  x: 3000,
  y: 150,
  width: 1200,
  depth: 300,
  ...change,
});
const room = (...pieces: Piece[]) => plainRoom({ pieces });
const found = { messageKey: 'turned', severity: 'should', needed: 300 } as const;
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];

testRule(turned, {
  fine: [
    { name: 'its back to the wall', classroom: room(shelf()) },
    { name: 'just 300 before the wall', classroom: room(shelf({ y: 450, rotation: 180 })) },
    { name: 'back to back', classroom: room(shelf({ y: 2000, rotation: 180 }), shelf({ id: 's2', y: 2300 })) },
    {
      name: 'a shelf across its corner: its middle is free',
      classroom: room(shelf(), shelf({ id: 's2', x: 2450, y: 950, rotation: -90 })),
    },
    { name: 'a table before it can be moved', classroom: room(shelf(), shelf({ id: 't1', kind: 'table', y: 500 })) },
    {
      name: 'a class that wants only 100',
      classroom: plainRoom({ pieces: [shelf({ y: 250, rotation: 180 })], options: { 'survey/turned': { least: 100 } } }),
    },
  ],
  problem: [
    {
      name: 'its front at the wall',
      classroom: room(shelf({ rotation: 180 })),
      findings: [{ ...found, subjects: ['s1'], measured: 0, fix: 'gone' }],
    },
    {
      name: '299 before the wall',
      classroom: room(shelf({ y: 449, rotation: 180 })),
      findings: [{ ...found, measured: 299, fix: 'gone' }],
    },
    {
      name: 'open to the left, where the wall is',
      classroom: room(shelf({ x: 700, y: 2000, sides: ['left'] })),
      findings: [{ ...found, measured: 100, fix: 'gone' }],
    },
    {
      name: 'front to front, 200 apart: either can be turned',
      classroom: room(shelf({ y: 2000 }), shelf({ id: 's2', y: 2500, rotation: 180 })),
      findings: [
        { ...found, subjects: ['s1'], measured: 200, fix: 'gone' },
        { ...found, subjects: ['s2'], measured: 200, fix: 'gone' },
      ],
    },
    {
      name: 'open to both sides against a wall: turning helps nothing',
      classroom: room(shelf({ sides: ['front', 'back'] })),
      findings: [found],
    },
    { name: 'a locked shelf', classroom: room(shelf({ rotation: 180, locked: true })), findings: [found] },
  ],
  cannotTell: [
    {
      name: 'walls that cross',
      classroom: plainRoom({ room: { corners: crossed }, pieces: [shelf({ y: 2500 })] }),
      findings: [{ messageKey: 'walls', missing: ['walls that close without crossing'] }],
    },
  ],
  doesNotApply: [
    { name: 'no shelf', classroom: plainRoom() },
    { name: 'a cupboard with doors', classroom: room(shelf({ rotation: 180, closed: true })) },
  ],
});

import { outside } from '#model/rules/survey/outside.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
type Corners = NonNullable<NonNullable<PlainRoomChange['room']>['corners']>;
const piece = (id: string, x: number, y: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'shelf',
  x,
  y,
  width: 1200,
  depth: 300,
  ...change,
});
const room = (...pieces: Piece[]) => plainRoom({ pieces });
const corners = (...at: [number, number][]): Corners => at.map(([x, y], i) => ({ id: `c${i + 1}`, x, y }));
/** 6 x 5 m with a notch of 2 x 2 m cut out of the middle of the south side. */
const notched = corners([0, 0], [6000, 0], [6000, 5000], [4000, 5000], [4000, 3000], [2000, 3000], [2000, 5000], [0, 5000]);
const door = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900 } as const;
const column = { id: 'f1', kind: 'column', width: 300, depth: 300 } as const;
const must = { severity: 'must' } as const;

testRule(outside, {
  fine: [
    { name: 'an empty room', classroom: plainRoom() },
    { name: 'backs on the walls', classroom: room(piece('s1', 3000, 150), piece('s2', 150, 2500, { rotation: 90 })) },
    { name: 'within the 1 mm that a tape cannot tell', classroom: room(piece('s1', 3000, 149)) },
    {
      name: 'in both legs of a notched room',
      classroom: plainRoom({ room: { corners: notched }, pieces: [piece('s1', 1000, 4850), piece('s2', 5000, 4850)] }),
    },
    {
      name: 'a room drawn the other way round',
      classroom: plainRoom({ room: { corners: corners([0, 0], [0, 5000], [6000, 5000], [6000, 0]) }, pieces: [piece('s1', 3000, 150)] }),
    },
    { name: 'a door that ends where its wall ends', classroom: plainRoom({ room: { openings: [{ ...door, offset: 5100 }] } }) },
    {
      name: 'a window above a door',
      classroom: plainRoom({ room: { openings: [door, { ...door, id: 'w1', kind: 'window', sill: 2100 }] } }),
    },
  ],
  problem: [
    {
      name: 'a shelf 60 mm in the wall goes back',
      classroom: room(piece('s1', 3000, 90)),
      findings: [{ messageKey: 'piece', ...must, subjects: ['s1'], measured: 60, needed: 0, fix: 'gone' }],
    },
    {
      name: 'through a corner: both ways at once',
      classroom: room(piece('s1', 570, 110)),
      findings: [{ messageKey: 'piece', ...must, measured: Math.hypot(30, 40), fix: 'gone' }],
    },
    {
      name: 'a turned shelf: its corner reaches farthest',
      classroom: room(piece('s1', 3000, 500, { rotation: 45 })),
      findings: [{ messageKey: 'piece', ...must, measured: 750 * Math.SQRT1_2 - 500, fix: 'gone' }],
    },
    {
      name: 'across a notch, both ends inside: through the legs of the room',
      classroom: plainRoom({ room: { corners: notched }, pieces: [piece('s1', 3000, 3050, { width: 2600 })] }),
      findings: [{ messageKey: 'piece', ...must, measured: 200, fix: 'gone' }],
    },
    {
      name: 'parked outside the room',
      classroom: room(piece('s1', 7000, 2500)),
      findings: [{ messageKey: 'piece', ...must, measured: 1600, fix: 'gone' }],
    },
    {
      name: 'a rug as well',
      classroom: room(piece('r1', 3000, 140, { kind: 'rug' })),
      findings: [{ messageKey: 'piece', ...must, measured: 10, fix: 'gone' }],
    },
    {
      name: 'no way back where another shelf stands in the way',
      classroom: room(
        piece('s1', 3000, -300),
        piece('s2', 3000, 150, { width: 6000 }),
        piece('s3', 3000, 1050, { width: 6000, depth: 1500 }),
      ),
      findings: [{ messageKey: 'piece', ...must, measured: 450 }],
    },
    {
      name: 'too long for the room',
      classroom: room(piece('s1', 3000, 2000, { width: 6400 })),
      findings: [{ messageKey: 'tooBig', ...must, measured: 200 }],
    },
    {
      name: 'a locked piece is not moved',
      classroom: room(piece('s1', 3000, 90, { locked: true })),
      findings: [{ messageKey: 'piece', ...must, measured: 60 }],
    },
    {
      name: 'a column half in the wall is a note, one in the yard is not',
      classroom: plainRoom({
        room: {
          fixtures: [
            { ...column, x: 3000, y: 0 },
            { ...column, id: 'f2', x: 8000, y: 2000 },
          ],
        },
      }),
      findings: [
        { messageKey: 'builtIn', severity: 'note', subjects: ['f1'], measured: 150 },
        { messageKey: 'fixture', ...must, subjects: ['f2'], measured: 2150 },
      ],
    },
    {
      name: 'openings: past the end, on one another, on no wall',
      classroom: plainRoom({
        room: {
          openings: [
            door,
            { ...door, id: 'd2', offset: 1200 },
            { ...door, id: 'd3', from: 'c2', offset: 4300 },
            { ...door, id: 'd4', from: 'c9' },
          ],
        },
      }),
      findings: [
        { messageKey: 'nowhere', ...must, subjects: ['d4'] },
        { messageKey: 'opening', ...must, subjects: ['d3'], measured: 200 },
        { messageKey: 'openings', ...must, subjects: ['d1', 'd2'], measured: 100 },
      ],
    },
    {
      name: 'a class that takes touching at its word',
      classroom: plainRoom({ pieces: [piece('s1', 3000, 149.5)], options: { 'survey/outside': { touching: 0 } } }),
      findings: [{ messageKey: 'piece', ...must, measured: 0.5, fix: 'gone' }],
    },
  ],
  cannotTell: [
    {
      name: 'walls that cross: nothing is said of the pieces',
      classroom: plainRoom({ room: { corners: corners([0, 0], [6000, 0], [0, 5000], [6000, 5000]) }, pieces: [piece('s1', 9000, 9000)] }),
      findings: [{ messageKey: 'walls', ...must, subjects: ['wall:c2', 'wall:c4'], missing: ['how the walls from c2 and c4 really run'] }],
    },
    {
      name: 'a corner typed twice',
      classroom: plainRoom({ room: { corners: corners([0, 0], [6000, 0], [6000, 0], [6000, 5000], [0, 5000]) } }),
      findings: [{ messageKey: 'corner', ...must, subjects: ['wall:c2'] }],
    },
    {
      name: 'three corners on a line',
      classroom: plainRoom({ room: { corners: corners([0, 0], [3000, 0], [6000, 0]), openings: [] } }),
      findings: [{ messageKey: 'noFloor', ...must, missing: ['the room’s corners'] }],
    },
  ],
});

import { mats } from '#model/rules/floor/mats.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Corners = NonNullable<NonNullable<PlainRoomChange['room']>['corners']>;
const rectangle = (width: number, depth: number): Corners => [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: width, y: 0 },
  { id: 'c3', x: width, y: depth },
  { id: 'c4', x: 0, y: depth },
];
/** Three by two mats with their gaps, to the mm, and nothing else. */
const sixMats = { corners: rectangle(3 * 1500 - 300, 2 * 1050 - 300), openings: [] };
const children = (count: number) => ({ groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count }] });
const table = { id: 't1', kind: 'table', x: 3000, y: 300, width: 1200, depth: 600, seatSides: { front: 2 } } as const;
const should = { severity: 'should', subjects: ['room'] } as const;

testRule(mats, {
  fine: [
    { name: 'eight children in an empty room', classroom: plainRoom() },
    { name: 'six mats where six fit to the mm', classroom: plainRoom({ room: sixMats, floorWork: { wanted: 6 } }) },
    { name: 'none wanted', classroom: plainRoom({ floorWork: { wanted: 0 } }) },
    { name: 'no child without a seat', classroom: plainRoom({ pieces: [table], children: children(2) }) },
    { name: 'a seat for some, mats for the others', classroom: plainRoom({ pieces: [table], children: children(4) }) },
    {
      name: 'a rug is laid on, and so is the floor before a closed cupboard',
      classroom: plainRoom({
        room: sixMats,
        floorWork: { wanted: 6 },
        pieces: [{ id: 'r1', kind: 'rug', x: 2100, y: 900, width: 2000, depth: 1000 }],
      }),
    },
  ],
  problem: [
    {
      name: 'one more than fits to the mm',
      classroom: plainRoom({ room: sixMats, floorWork: { wanted: 7 } }),
      findings: [{ messageKey: 'tooFew', ...should, measured: 6, needed: 7 }],
    },
    {
      name: 'children without a seat, more than the floor takes',
      classroom: plainRoom({ room: sixMats, children: children(8) }),
      findings: [{ messageKey: 'tooFew', ...should, measured: 6, needed: 8 }],
    },
    {
      name: 'a room a millimetre too small',
      classroom: plainRoom({ room: { corners: rectangle(1199, 749), openings: [] }, floorWork: { wanted: 1 } }),
      findings: [{ messageKey: 'tooFew', ...should, measured: 0, needed: 1 }],
    },
  ],
  cannotTell: [
    {
      name: 'more than were found a place, fewer than the area takes',
      // 5.0 x 1.199 m: 3 in one row, and the area speaks of 5.
      classroom: plainRoom({ room: { corners: rectangle(1199, 5000), openings: [] }, floorWork: { wanted: 4 } }),
      findings: [
        {
          messageKey: 'between',
          ...should,
          measured: 3,
          needed: 4,
          missing: ['a place for 1 more mat: lay them out in the room and see whether the ways stay open'],
        },
      ],
    },
    {
      name: 'walls that cross',
      classroom: plainRoom({
        room: {
          corners: [...rectangle(6000, 5000).slice(0, 2), { id: 'c3', x: 0, y: 5000 }, { id: 'c4', x: 6000, y: 5000 }],
          openings: [],
        },
        floorWork: { wanted: 1 },
      }),
      findings: [{ messageKey: 'walls', ...should }],
    },
  ],
  doesNotApply: [{ name: 'nobody enrolled and nothing wanted', classroom: plainRoom({ children: { groups: [] } }) }],
});

import { strand } from '#model/rules/order/strand.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

/** a1, a2, … are of strand a, b1, … of b; "-" is of none. */
const materials = (ids: readonly string[], change: Partial<MaterialInput> = {}) =>
  ids.map((id) => tray(id, { strand: id.startsWith('none') ? '' : id.slice(0, 1), ...change }));
const row = (ids: readonly string[], change: PlainRoomChange = {}, of: Partial<MaterialInput> = {}) =>
  plainRoom({ pieces: [shelf('s')], materials: materials(ids, of), placements: placed({ 's-1': ids }), ...change });
const note = { messageKey: 'cut', severity: 'note', needed: 0 } as const;

testRule(strand, {
  fine: [
    { name: 'one strand after the other', classroom: row(['a1', 'a2', 'b1', 'b2']) },
    {
      name: 'a strand that goes on from board to board and from shelf to shelf',
      classroom: plainRoom({
        pieces: [shelf('s'), shelf('t', { x: 4000 })],
        walk: [
          { piece: 's', side: 'front' },
          { piece: 't', side: 'front' },
        ],
        materials: materials(['b1', 'a1', 'a2', 'a3']),
        placements: placed({ 's-1': ['b1', 'a1'], 's-2': ['a2'], 't-1': ['a3'] }),
      }),
    },
    { name: 'a thing of no strand cuts nothing', classroom: row(['a1', 'none', 'a2', 'b1']) },
    {
      name: 'what has to come between does not cut',
      classroom: plainRoom({
        pieces: [shelf('s')],
        materials: [tray('a1', { strand: 'a' }), tray('b1', { strand: 'b', after: ['a1'] }), tray('a2', { strand: 'a', after: ['b1'] })],
        placements: placed({ 's-1': ['a1', 'b1', 'a2'] }),
      }),
    },
    {
      name: 'something heavy on the lowest board cuts nothing',
      classroom: plainRoom({
        pieces: [shelf('s')],
        materials: [...materials(['a1', 'a2', 'b2']), tray('b1', { strand: 'b', heaviest: 3 })],
        placements: placed({ 's-3': ['a1', 'b1', 'a2', 'b2'] }),
      }),
    },
  ],
  problem: [
    {
      name: 'one thing apart: it moves beside its strand',
      classroom: row(['a1', 'a2', 'b1', 'a3']),
      findings: [{ ...note, subjects: ['a3'], measured: 1, fix: 'gone' }],
    },
    {
      name: 'two things apart: for the class to say',
      classroom: plainRoom({
        pieces: [shelf('s')],
        materials: materials(['a1', 'a2', 'b1', 'a3', 'a4', 'a5']),
        placements: placed({ 's-1': ['a1', 'a2', 'b1'], 's-2': ['a3', 'a4', 'a5'] }),
      }),
      findings: [{ ...note, subjects: ['a1', 'a2'], measured: 2 }],
    },
    {
      name: 'two strands that cut each other',
      classroom: row(['a1', 'b1', 'a2', 'b2']),
      findings: [
        { ...note, subjects: ['a2'], fix: 'gone' },
        { ...note, subjects: ['b2'], fix: 'gone' },
      ],
    },
    {
      name: 'read from right to left the largest piece is another',
      classroom: row(['a1', 'b1', 'a2', 'a3'], { display: { readingDirection: 'rtl' } }),
      findings: [{ ...note, subjects: ['a1'], fix: 'gone' }],
    },
    {
      name: 'nowhere in step beside its strand: no fix',
      // a2 has to come after b1, which stands behind b2; b2 need not be there, so it cuts.
      classroom: plainRoom({
        pieces: [shelf('s')],
        materials: [
          tray('a1', { strand: 'a' }),
          tray('b1', { strand: 'b', after: ['a1'] }),
          tray('b2', { strand: 'b' }),
          tray('a2', { strand: 'a', after: ['b1'] }),
        ],
        placements: placed({ 's-1': ['a1', 'b2', 'b1', 'a2'] }),
      }),
      findings: [{ ...note, subjects: ['a2'] }],
    },
    {
      name: 'practical life, once the class turns it on',
      classroom: row(['a1', 'b1', 'a2'], { options: { 'order/strand': { practicalLife: true } } }, { area: 'practical-life' }),
      findings: [{ ...note, subjects: ['a2'], fix: 'gone' }],
    },
  ],
  cannotTell: [],
  neverCannotTell: 'every tray stands where it stands',
  doesNotApply: [
    { name: 'an empty room', classroom: plainRoom() },
    { name: 'one strand', classroom: row(['a1', 'a2']) },
    { name: 'practical life', classroom: row(['a1', 'b1', 'a2'], {}, { area: 'practical-life' }) },
  ],
});

import { swing } from '#model/rules/exit/swing.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// B05 of the International Building Code; B18 of Approved Document B, from memory.
type Opening = NonNullable<NonNullable<PlainRoomChange['room']>['openings']>[number];
const d1: Opening = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'in-left', exit: true };
const room = (opening: Partial<Opening>, change: PlainRoomChange) => plainRoom({ ...change, room: { openings: [{ ...d1, ...opening }] } });
const children = (count: number) => ({ children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 60, count }] } });
const england = { exitRules: 'england-adb' } as const;
const ibc = { exitRules: 'us-ibc' } as const;

testRule(swing, {
  fine: [
    { name: 'B05: 49 persons', classroom: room({}, { ...ibc, ...children(47) }) },
    { name: 'B18: 60 persons', classroom: room({}, { ...england, ...children(58) }) },
    { name: 'outward', classroom: room({ swing: 'out-right' }, { ...ibc, ...children(80) }) },
  ],
  problem: [
    {
      name: 'B05: 50 persons',
      classroom: room({}, { ...ibc, ...children(48) }),
      findings: [{ messageKey: 'inward', severity: 'should', subjects: ['d1'] }],
    },
    {
      name: 'B18: 61 persons',
      classroom: room({ swing: 'in-right' }, { ...england, ...children(59) }),
      findings: [{ messageKey: 'inward' }],
    },
    {
      name: 'a class that wants it from 10 on',
      classroom: room({}, { ...england, options: { 'exit/swing': { persons: 10 } } }),
      findings: [{ messageKey: 'inward', subjects: ['d1'] }],
    },
  ],
  cannotTell: [
    {
      name: 'no rules chosen',
      classroom: room({}, {}),
      findings: [{ messageKey: 'rules', severity: 'should', subjects: ['room'], missing: ['whose rules count for the ways out'] }],
    },
    {
      name: 'no exit marked',
      classroom: room({ exit: false }, england),
      findings: [{ messageKey: 'exits', missing: ['which doors lead out of the building or to a safe way out'] }],
    },
  ],
  doesNotApply: [
    { name: 'a sliding door', classroom: room({ swing: 'sliding' }, { ...ibc, ...children(80) }) },
    { name: 'a passage', classroom: room({ kind: 'passage', swing: 'none' }, { ...ibc, ...children(80) }) },
  ],
});

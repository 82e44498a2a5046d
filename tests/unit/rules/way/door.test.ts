import { door } from '#model/rules/way/door.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Opening = NonNullable<NonNullable<PlainRoomChange['room']>['openings']>[number];
const room = (opening: Partial<Opening>, change: PlainRoomChange = {}) =>
  plainRoom({
    ...change,
    room: { openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 1000, swing: 'out-left', ...opening }] },
  });
const missing = ['the clear opening of door d1 with its leaf at 90 degrees'];
const required = { access: { required: true } };

testRule(door, {
  fine: [
    { name: 'ADA 404.2.3: 815 clear (A09)', classroom: room({ clear: 815 }) },
    { name: 'ADA 404.2.3: 32 in, 812.8 (A09)', classroom: room({ clear: 812.8 }, required) },
    { name: 'ADA 404.2.3: 915 where the opening is deep (A09)', classroom: room({ clear: 915, depth: 700 }) },
    { name: 'ADA 404.2.3: 610 deep is not deeper than 610 (A09)', classroom: room({ clear: 815, depth: 610 }) },
    { name: 'not measured, 50 wider', classroom: room({ width: 865 }) },
    { name: 'a passage is as clear as it is wide', classroom: room({ kind: 'passage', width: 820 }) },
  ],
  problem: [
    {
      name: 'a little under 32 in',
      classroom: room({ clear: 812 }),
      findings: [{ messageKey: 'narrow', severity: 'should', subjects: ['d1'], measured: 812, needed: 815 }],
    },
    {
      name: 'the same on an accessible route',
      classroom: room({ clear: 812 }, required),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 812, needed: 815 }],
    },
    {
      name: 'the same for a wheelchair user',
      classroom: room({ clear: 700 }, { access: { wheelchair: true } }),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 700, needed: 815 }],
    },
    {
      name: 'ADA 404.2.3: deeper than 610 needs 915 (A09)',
      classroom: room({ clear: 910, depth: 611 }),
      findings: [{ messageKey: 'narrow', severity: 'should', measured: 910, needed: 915 }],
    },
    {
      name: 'under the least width',
      classroom: room({ clear: 710 }),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 710, needed: 711 }],
    },
    {
      name: 'not measured, too narrow in all',
      classroom: room({ width: 812 }),
      findings: [{ messageKey: 'narrowFrame', severity: 'should', measured: 812, needed: 815 }],
    },
    {
      name: 'a figure the class typed is taken as it is',
      classroom: room({ clear: 849.9 }, { options: { 'way/door': { clear: 850 } } }),
      findings: [{ messageKey: 'narrow', measured: 849.9, needed: 850 }],
    },
    {
      name: 'the class calls 300 deep, and asks 1000 there',
      classroom: room({ clear: 950, depth: 400 }, { options: { 'way/door': { deepOver: 300, deepClear: 1000 } } }),
      findings: [{ messageKey: 'narrow', measured: 950, needed: 1000 }],
    },
  ],
  cannotTell: [
    {
      name: 'not measured, wide enough in all only',
      classroom: room({ width: 840 }),
      findings: [{ messageKey: 'notMeasured', needed: 815, missing }],
    },
    {
      name: 'a thicker leaf',
      classroom: room({ width: 900 }, { options: { 'way/door': { leaf: 100 } } }),
      findings: [{ messageKey: 'notMeasured', severity: 'should', needed: 815, missing }],
    },
    {
      name: 'perhaps under the least width',
      classroom: room({ width: 730 }, { options: { 'way/door': { clear: 700 } } }),
      findings: [{ messageKey: 'notMeasured', severity: 'must', needed: 711, missing }],
    },
  ],
  doesNotApply: [{ name: 'a window is no door', classroom: room({ kind: 'window', width: 600 }) }],
});

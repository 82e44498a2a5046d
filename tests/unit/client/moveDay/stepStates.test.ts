import { expect, it } from 'vitest';
import { readCrateKg, readHandOrder, readStates } from '#client/moveDay/stepStates.ts';

it('reads who ticked what, of this pair of arrangements only', () => {
  const moveDay = {
    'a1>a2': {
      'move:s1': { state: 'done', by: 'MK', at: '2027-01-04' },
      'move:s2': { state: 'cannot', by: 'RT', why: 'the wall is wet' },
      'move:s3': null,
    },
    'a1>a3': { 'move:s1': { state: 'doing', by: 'AO' } },
  };
  expect([...readStates(moveDay, 'a1', 'a2')]).toEqual([
    ['move:s1', { state: 'done', by: 'MK', why: '' }],
    ['move:s2', { state: 'cannot', by: 'RT', why: 'the wall is wet' }],
  ]);
  expect(readStates(moveDay, 'a2', 'a1').size).toBe(0);
});

it.each([null, 7, 'x', [], { 'a1>a2': [1] }, { 'a1>a2': { s: 'done' } }, { 'a1>a2': { s: { state: 'flown' } } }])(
  'what another hand wrote there (%j) counts as open',
  (moveDay) => {
    expect(readStates(moveDay, 'a1', 'a2').size).toBe(0);
    expect(readHandOrder(moveDay, 'a1', 'a2')).toBeNull();
    expect(readCrateKg(moveDay)).toBeNull();
  },
);

it('reads an order made by hand, and the kg of a crate within reason', () => {
  expect(readHandOrder({ 'a1>a2:order': { list: ['b', 7, 'a'] } }, 'a1', 'a2')).toEqual(['b', 'a']);
  expect(readHandOrder({ 'a1>a2:order': { list: null } }, 'a1', 'a2')).toBeNull();
  expect([12.5, 0, 900].map((kg) => readCrateKg({ crates: { kg } }))).toEqual([12.5, null, null]);
});

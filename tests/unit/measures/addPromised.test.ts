import { describe, expect, it } from 'vitest';
import { addPromised } from '#model/measures/addPromised.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const groups = [{ id: 'g1', name: 'three', fromMonths: 36, toMonths: 48, count: 12 }];
const room = plainRoom({ children: { groups }, adults: 2 });

describe('adding them to the class', () => {
  const made = () => ({ id: 'new', name: '2 years 9 months' });
  const today = '2026-11-26';
  const valid = (change: object): Classroom => {
    const read = readClassroom(JSON.parse(JSON.stringify({ ...room, ...change })));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return read.classroom;
  };
  it('makes a group of their own age, or joins one of just that age', () => {
    const change = addPromised(room, { months: 33, count: 2, from: null }, today, made);
    const joined = valid(change);
    expect(joined.children.groups.at(-1)).toMatchObject({ id: 'new', name: '2 years 9 months', fromMonths: 33, toMonths: 34, count: 2 });
    expect(joined.children.percentile).toBe(room.children.percentile);
    const again = addPromised(joined, { months: 33, count: 1, from: null }, today, made);
    expect(again.children?.groups.map(({ count }) => count)).toEqual([12, 3]);
  });
  it('from a date on is an entry of the year, in order; one of that date is joined, and they stay in later ones, older by then', () => {
    const first = valid(addPromised(room, { months: 33, count: 1, from: '2027-04-05' }, today, made));
    expect(first.children.groups).toEqual(room.children.groups);
    expect(first.enrolment.map(({ from, groups: g }) => [from, g.map(({ count }) => count)])).toEqual([['2027-04-05', [12, 1]]]);
    const earlier = valid({ ...first, ...addPromised(first, { months: 50, count: 1, from: '2027-01-01' }, today, made) });
    expect(earlier.enrolment.map(({ from, groups: g }) => [from, g.map(({ count }) => count)])).toEqual([
      ['2027-01-01', [12, 1]],
      ['2027-04-05', [12, 1, 1]],
    ]);
    // 1 January to 5 April: three whole months.
    expect(earlier.enrolment[1]?.groups.at(-1)).toEqual({ fromMonths: 53, toMonths: 54, count: 1 });
    const same = addPromised(earlier, { months: 60, count: 4, from: '2027-04-05' }, today, made);
    expect(same.enrolment?.[1]?.groups.map(({ count }) => count)).toEqual([12, 1, 1, 4]);
  });
  it('now, where an entry is in force: one begins today with them, the past stays, and they are in those to come', () => {
    const entry = (from: string) => ({ from, groups: [{ fromMonths: 36, toMonths: 48, count: 12 }] });
    const year = valid({ enrolment: [entry('2026-09-01'), entry('2027-04-26')] });
    const joined = valid({ ...year, ...addPromised(year, { months: 33, count: 1, from: null }, today, made) });
    const told = ({ enrolment }: Classroom) => enrolment.map(({ from, groups: g }) => [from, g.reduce((sum, { count }) => sum + count, 0)]);
    expect(told(joined)).toEqual([
      ['2026-09-01', 12],
      ['2026-11-26', 13],
      ['2027-04-26', 13],
    ]);
    expect(joined.enrolment.map(({ groups: g }) => g.at(-1)?.fromMonths)).toEqual([36, 33, 38]);
    // the class counted now says the same as the entry in force
    expect(joined.children.groups.reduce((sum, { count }) => sum + count, 0)).toBe(13);
    const twice = addPromised(joined, { months: 33, count: 1, from: null }, today, made);
    expect(told({ ...joined, ...twice })).toEqual([
      ['2026-09-01', 12],
      ['2026-11-26', 14],
      ['2027-04-26', 14],
    ]);
  });
  it('keeps what else an entry and its groups hold', () => {
    const entry = { from: '2027-04-05', remark: 'after Easter', groups: [{ fromMonths: 36, toMonths: 48, count: 12, room: 'north' }] };
    const year = valid({ enrolment: [entry] });
    const { enrolment } = addPromised(year, { months: 33, count: 1, from: '2027-04-05' }, today, made);
    expect(enrolment).toEqual([{ ...entry, groups: [...entry.groups, { fromMonths: 33, toMonths: 34, count: 1 }] }]);
    const later = addPromised(year, { months: 33, count: 1, from: '2027-05-05' }, today, made);
    expect(later.enrolment?.[0]).toEqual(entry);
    expect(later.enrolment?.[1]?.groups[0]).toEqual(entry.groups[0]);
    // An entry that begins with the children of now takes over their ages, not their names.
    const first = addPromised(room, { months: 33, count: 1, from: '2027-04-05' }, today, made);
    expect(first.enrolment?.[0]?.groups[0]).toEqual({ fromMonths: 36, toMonths: 48, count: 12 });
  });
  it('now, before the first entry: no entry is made up, later ones have them', () => {
    const year = valid({ enrolment: [{ from: '2027-04-26', groups: [{ fromMonths: 36, toMonths: 48, count: 12 }] }] });
    const change = addPromised(year, { months: 33, count: 1, from: null }, today, made);
    expect(change.enrolment?.map(({ from, groups: g }) => [from, g.length])).toEqual([['2027-04-26', 2]]);
    expect(addPromised(room, { months: 33, count: 1, from: null }, today, made).enrolment).toBeUndefined();
  });
});

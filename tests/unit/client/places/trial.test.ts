import { describe, expect, it } from 'vitest';
import { addPromised } from '#client/places/trial/addPromised.ts';
import { sayTrial, trialRows } from '#client/places/trial/trialRows.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { type Promised, tryPromised } from '#model/measures/trial.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const groups = [{ id: 'g1', name: 'three', fromMonths: 36, toMonths: 48, count: 12 }];
const room = plainRoom({ children: { groups }, adults: 2 });
const trial = (classroom: Classroom, promised: Promised) =>
  tryPromised(classroom, measuresOf(buildScene(classroom)).floorPlaces().counted, promised);

describe('the trial in words', () => {
  const result = trial(room, { months: 33, count: 3, from: null });
  it('has a line for each limit, before and after, and marks what is not enough', () => {
    const rows = trialRows(result, 14, 'metric');
    const row = (text: string) => rows.find((one) => one.text === text);
    expect(row('Children')).toEqual({ text: 'Children', before: '12', after: '15', isShort: false });
    expect(row('Floor they need')).toMatchObject({ before: '27.60 m²', after: '35.10 m²' });
    expect(row('Floor left over')).toMatchObject({ before: '2.40 m²', after: '5.10 m² too little', isShort: true });
    expect(row('Adults the rule asks for')).toMatchObject({ before: '2', after: '3' });
    expect(row('Adults wanting, beside those there')).toMatchObject({ before: 'none', after: '1 adult', isShort: true });
    expect(row('Toilets')).toMatchObject({ before: '2 needed, not counted', after: '2 needed, not counted', isShort: false });
    expect(row('Places to work found')).toMatchObject({ before: '14', after: '14', isShort: true });
  });
  it('says in sentences what is short, and that she is the youngest', () => {
    expect(sayTrial(result, 14, 'metric')).toEqual([
      'A child of 2 years 9 months needs 2.50 m² of floor by the rule of England.',
      'That age is outside the class: it has ages 3 to 4.',
      'The floor is too small by 5.10 m².',
      '1 adult more is needed.',
      'Places to work were found for 14 of 15; that is a class rule.',
      expect.stringContaining('She would be the youngest'),
    ]);
    expect(sayTrial(trial(room, { months: 40, count: 1, from: null }), 20, 'metric')).toEqual([
      'A child of 3 years 4 months needs 2.30 m² of floor by the rule of England.',
      'They fit, as far as is known.',
    ]);
  });
  it('names the age that no row of the rule set has', () => {
    expect(sayTrial(trial(room, { months: 80, count: 1, from: null }), null, 'metric').join(' ')).toContain(
      'beyond the rows of England for floor: the nearest row was taken',
    );
  });
  it('where questions are open says that it depends', () => {
    const open = plainRoom({
      children: { groups },
      pieces: [{ id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1000, depth: 500 }],
    });
    const one = trial(open, { months: 36, count: 1, from: null });
    expect(sayTrial(one, null, 'metric').join(' ')).toContain('depends on questions');
    expect(trialRows(one, null, 'metric').find(({ text }) => text === 'Floor left over')?.after).toBe('0.40 m² too little, or 0.10 m²');
  });
});

describe('adding them to the class', () => {
  const id = () => 'new';
  const valid = (change: object): Classroom => {
    const read = readClassroom(JSON.parse(JSON.stringify({ ...room, ...change })));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return read.classroom;
  };
  it('makes a group of their own age, or joins one of just that age', () => {
    const change = addPromised(room, { months: 33, count: 2, from: null }, id);
    const joined = valid(change);
    expect(joined.children.groups.at(-1)).toMatchObject({ id: 'new', name: '2 years 9 months', fromMonths: 33, toMonths: 34, count: 2 });
    expect(joined.children.percentile).toBe(room.children.percentile);
    const again = addPromised(joined, { months: 33, count: 1, from: null }, id);
    expect(again.children?.groups.map(({ count }) => count)).toEqual([12, 3]);
  });
  it('from a date on is an entry of the year, in order; one of that date is joined, later ones stay', () => {
    const first = valid(addPromised(room, { months: 33, count: 1, from: '2027-04-05' }, id));
    expect(first.children.groups).toEqual(room.children.groups);
    expect(first.enrolment.map(({ from, groups: g }) => [from, g.map(({ count }) => count)])).toEqual([['2027-04-05', [12, 1]]]);
    const earlier = valid({ ...first, ...addPromised(first, { months: 50, count: 1, from: '2027-01-01' }, id) });
    expect(earlier.enrolment.map(({ from, groups: g }) => [from, g.map(({ count }) => count)])).toEqual([
      ['2027-01-01', [12, 1]],
      ['2027-04-05', [12, 1]],
    ]);
    const same = addPromised(earlier, { months: 60, count: 4, from: '2027-04-05' }, id);
    expect(same.enrolment?.[1]?.groups.map(({ count }) => count)).toEqual([12, 1, 4]);
  });
});

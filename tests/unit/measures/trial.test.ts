import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { placesLineOf } from '#client/places/placesLine.ts';
import { analyse } from '#model/analysis/report.ts';
import { addPromised } from '#model/measures/addPromised.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { childrenOnDate, type Promised, tryPromised } from '#model/measures/trial.ts';
import { area } from '#model/rules/places/area.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const trial = (classroom: Classroom, promised: Promised) =>
  tryPromised(classroom, measuresOf(buildScene(classroom)).floorPlaces().counted, promised);
const now = (months: number, count = 1): Promised => ({ months, count, from: null });

// C01, England: 2.5 m² a child of two, 2.3 m² of three to five. C02: one adult for five under three, for eight from
// three. The plain room counts 30 m².
describe('a child of 2 years 9 months in a room of England', () => {
  const room = plainRoom({ children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count: 12 }] }, adults: 2 });
  const { before, after, isYoungest, entry } = trial(room, now(33));
  it('needs 2.5 m² where a child of three needs 2.3', () => {
    expect(before.space?.need).toBeCloseTo(12 * 2.3, 9);
    expect(after.space?.need).toBeCloseTo(12 * 2.3 + 2.5, 9);
    expect(before.spare).toBeCloseTo(2.4, 9);
    expect(after.spare).toBeCloseTo(-0.1, 9);
  });
  it('asks for a fifth of an adult where a child of three asks for an eighth', () => {
    // 12/8 = 1.5, with her 1.7: two adults both times. 16 children of three fit two adults, of this mix 13/1.7*2 = 15.
    expect([before.adultsAsked, after.adultsAsked]).toEqual([2, 2]);
    expect([before.byAdults, after.byAdults]).toEqual([16, 15]);
    const more = trial(room, now(33, 3));
    // 1.5 + 3/5 = 2.1
    expect(more.after.adultsAsked).toBe(3);
    expect(more.after.adultsMore).toEqual({ role: 'assistant', count: 1 });
  });
  it('is told what the floor is for her alone, and that the class is for other ages', () => {
    expect(trial(room, now(33))).toMatchObject({ months: 33, floorEach: 2.5, outsideClass: { from: 36, to: 48 } });
    expect(trial(room, now(47))).toMatchObject({ floorEach: 2.3, outsideClass: null });
    expect(trial(room, now(48)).outsideClass).toEqual({ from: 36, to: 48 });
    expect(trial({ ...room, ruleSet: 'own' }, now(33)).floorEach).toBe(null);
  });
  it('would be the youngest, which is said', () => {
    expect(isYoungest).toBe(true);
    expect(trial(room, now(40)).isYoungest).toBe(false);
    expect(entry).toBe(null);
  });
});

describe('ages that no row has', () => {
  it('are told: the table of England for floor ends at 72 months, that for adults does not', () => {
    const room = plainRoom();
    expect(trial(room, now(71))).toMatchObject({ isBeyondSpace: false, isBeyondRatio: false });
    expect(trial(room, now(80))).toMatchObject({ isBeyondSpace: true, isBeyondRatio: false });
    const wales = { ...room, ruleSet: 'wales' };
    expect(trial(wales, now(170))).toMatchObject({ isBeyondSpace: true, isBeyondRatio: true });
  });
});

describe('on a date', () => {
  const entries = [
    { from: '2027-04-05', groups: [{ fromMonths: 36, toMonths: 48, count: 5 }] },
    { from: '2027-01-10', groups: [{ fromMonths: 36, toMonths: 48, count: 3 }] },
  ];
  const room = plainRoom({ enrolment: entries });
  it.each([
    [null, null, 8],
    ['2026-12-31', null, 8],
    ['2027-01-10', '2027-01-10', 3],
    ['2027-03-01', '2027-01-10', 3],
    ['2028-01-01', '2027-04-05', 5],
  ])('%s the entry of %s counts, with %i children', (date, entry, children) => {
    const found = childrenOnDate(room, date);
    expect(found.entry).toBe(entry);
    expect(found.groups[0]?.count).toBe(children);
    const { before, after } = trial(room, { months: 40, count: 2, from: date });
    expect([before.children, after.children]).toEqual([children, children + 2]);
  });
});

describe('a trial says what the report says once they are added', () => {
  const text = readFileSync(resolve(import.meta.dirname, '../../../client/demo/demo-room.json'), 'utf8');
  const read = readClassroom(JSON.parse(text));
  if (!read.ok) throw new Error('the demo can be read');
  const demo = read.classroom;
  it.each([
    ['england', 33, 1],
    ['england', 70, 2],
    ['us-california', 33, 2],
    ['us-cfoc', 30, 1],
    ['australia', 33, 3],
  ])('under %s, age %i months, %i more', (ruleSet, months, count) => {
    const classroom = { ...demo, ruleSet };
    const { after } = trial(classroom, now(months, count));
    const joined: Classroom = {
      ...classroom,
      ...addPromised(classroom, now(months, count), '2026-11-26', () => ({ id: 'new', name: '' })),
    };
    const line = placesLineOf(analyse(joined, { rules: [area] }));
    if (!line) throw new Error('places are in the report');
    expect(line.enrolled).toBe(after.children);
    expect(line.needArea).toBeCloseTo(after.space?.need ?? -1, 5);
    expect(line.spareArea).toBeCloseTo(after.spare ?? -1, 5);
    expect([line.byArea, line.byAreaMost, line.byAdults, line.byGroup]).toEqual([
      after.byArea,
      after.byAreaMost,
      after.byAdults,
      after.byGroup,
    ]);
    // and the class itself was not touched
    expect(placesLineOf(analyse(classroom, { rules: [area] }))?.enrolled).toBe(after.children - count);
  });
});

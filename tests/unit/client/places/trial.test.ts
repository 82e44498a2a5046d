import { describe, expect, it } from 'vitest';
import { sayTrialFindings } from '#client/places/trial/sayTrialFindings.ts';
import { tryAtDesk } from '#client/places/trial/trialDesk.ts';
import { sayTrial, trialRows } from '#client/places/trial/trialRows.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { type Promised, tryPromised } from '#model/measures/trial.ts';
import { buildScene } from '#model/scene/build.ts';
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
    expect(row('Children')).toEqual({ text: 'Children', before: '12', after: '15', isShort: false, wasShort: false });
    expect(row('Floor they need')).toMatchObject({ before: '27.60 m²', after: '35.10 m²' });
    expect(row('Floor left over')).toMatchObject({ before: '2.40 m²', after: '5.10 m² too little', isShort: true });
    expect(row('Adults the rule asks for')).toMatchObject({ before: '2', after: '3' });
    expect(row('Adults wanting, beside those there')).toMatchObject({ before: 'none', after: '1 adult', isShort: true });
    expect(row('Toilets')).toMatchObject({ before: '2 needed, not counted', after: '2 needed, not counted', isShort: false });
    expect(row('Places to work found')).toMatchObject({ before: '14', after: '14', isShort: true, wasShort: false });
  });
  it('says in sentences what is short, and that she is the youngest', () => {
    expect(sayTrial(result, 14, 'metric')).toEqual([
      'A child of 2 years 9 months needs 2.50 m² of floor by the rule of England.',
      'That age is outside the class: it has ages 3 to 4.',
      'The floor is too small by 5.10 m².',
      '1 adult more is needed.',
      'Places to work were found for 14 of 15; that is no licensing limit.',
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

describe('what the checks say with them, in words', () => {
  const same = { before: 13, after: 13, byQuestion: [], fresh: [] };
  it('each count by its question', () => {
    const must = {
      before: 13,
      after: 21,
      byQuestion: [
        { question: 'reach', before: 2, after: 8 },
        { question: 'steady', before: 0, after: 2 },
      ] as const,
      fresh: [],
    };
    expect(sayTrialFindings({ must, should: same }, 1)).toBe(
      'With her 8 more things must be mended: 6 out of her reach, 2 about safety and small parts (21 in all, 13 before).',
    );
    const should = {
      before: 4,
      after: 4,
      byQuestion: [
        { question: 'way', before: 2, after: 1 },
        { question: 'floor', before: 0, after: 1 },
      ] as const,
      fresh: [],
    };
    expect(sayTrialFindings({ must: same, should }, 2)).toBe(
      'With them 1 more thing should be mended: 1 about floor to work on; 1 about getting through no longer (4 in all, 4 before).',
    );
  });
  it('nothing new', () => expect(sayTrialFindings({ must: same, should: same }, 1)).toContain('nothing that they do not find now'));
  it('where it breaks, why', () => {
    const broken = tryAtDesk({
      promised: { months: 33, count: 1, from: null },
      classroom: { ...room, arrangements: [] },
      arrangement: 'a1',
      today: '2026-11-26',
    });
    expect(broken).toEqual({ failure: expect.any(String) });
  });
});

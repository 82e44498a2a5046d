import { describe, expect, it } from 'vitest';
import { keyList } from '#client/plan/keyList.ts';
import { setVerbs } from '#client/plan/set/chosenVerbs.ts';
import { asides, verbs } from '#client/plan/tools.ts';

const all = (mayChange: boolean) => keyList('metric', mayChange).flatMap(({ keys }) => keys);

describe('the list of keys', () => {
  it('has every letter that does something, each once, with the name of what it does', () => {
    const letters = [...verbs, ...asides, ...setVerbs];
    for (const { letter, name } of letters) {
      const found = all(true).filter(({ key }) => key === letter);
      expect([letter, found.length, found[0]?.does.startsWith(name)]).toEqual([letter, 1, true]);
    }
  });

  it('says lengths in the class’s units', () => {
    expect(keyList('metric', true)[0]?.keys.find(({ key }) => key === 'Arrows')?.does).toContain('0.05 m');
    expect(keyList('imperial', true)[0]?.keys.find(({ key }) => key === 'Arrows')?.does).toContain('by 2"');
  });

  it('says how the tape and a remark go by the keys, to who may only look as well', () => {
    for (const mayChange of [true, false])
      expect(keyList('metric', mayChange).find(({ title }) => title.startsWith('With the tape'))?.keys[0]).toEqual({
        key: 'Arrows',
        does: 'Move a cross by 0.05 m, with Shift by 0.50 m, with Alt by 0.01 m',
      });
  });

  it('says how a table is walked, to who may only look as well', () => {
    for (const mayChange of [true, false])
      expect(
        keyList('metric', mayChange)
          .find(({ title }) => title === 'In a table or a list')
          ?.keys.map(({ key }) => key),
      ).toEqual(['Tab, Shift Tab', 'Up, down', 'Left, right', 'Home, End']);
  });

  it('names no key to who may only look that would change something', () => {
    const words = all(false).map(({ does }) => does);
    expect(words.filter((does) => /slide|turn|put|wall|mirror|take back/i.test(does))).toEqual([]);
    expect(words).toContain('Tape');
  });
});

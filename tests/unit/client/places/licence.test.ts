import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { licenceOf } from '#client/places/licence/licenceOf.ts';
import { sayItems, sayLicence, short } from '#client/places/licence/sayLicence.ts';
import { placesLineOf } from '#client/places/placesLine.ts';
import { analyse } from '#model/analysis/report.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { area } from '#model/rules/places/area.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sourceText } from '#model/standards/sources.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const read = readClassroom(JSON.parse(readFileSync(resolve(import.meta.dirname, '../../../../client/demo/demo-room.json'), 'utf8')));
if (!read.ok) throw new Error('the demo can be read');
const demo = read.classroom;

/** `isQuick`: without looking for mats, which takes seconds and changes only the places to work. */
function sheet(classroom: Classroom, isQuick = true) {
  const line = placesLineOf(analyse(classroom, { rules: [area], ...(isQuick && { mats: null }) }));
  if (!line) throw new Error('places are in the report');
  return { line, licence: licenceOf(classroom, measuresOf(buildScene(classroom)).floorPlaces(), line, false) };
}

describe.each([
  ['england', {}],
  ['us-california', {}],
  ['us-cfoc', {}],
  ['us-california', { asked: {} }],
] as const)('the licence sheet of the demo under %s %o', (ruleSet, change) => {
  const classroom: Classroom = { ...demo, ...change, ruleSet };
  const { line, licence } = sheet(classroom, ruleSet !== 'england');
  it('has the figures of the report', () => {
    expect(licence).toMatchObject({
      counted: line.countedArea,
      countedMost: line.countedAreaMost,
      need: line.needArea,
      spare: line.spareArea,
      byArea: line.byArea,
      byAdults: line.byAdults,
      byWork: line.byWork,
      places: line.places,
      binding: line.binding,
      enrolled: line.enrolled,
    });
    const byRule = [line.byArea, line.byAdults, line.byGroup].filter((limit) => limit !== null);
    const words = sayLicence(licence).join(' ');
    expect(words).toContain(`(the licence) the room takes ${Math.min(...byRule)}`);
    // What was found is no limit until it is proven.
    if (line.byWork !== null)
      expect(words).toContain(`By places to work in this layout ${line.byWork} were found, which is no licensing limit;`);
    expect(sayLicence({ ...licence, areMatsProven: true }).join(' ')).not.toContain('not proven');
  });
  it('whose lines add up: walls less what is taken off is what counts, groups make what is needed', () => {
    const off = licence.floor.reduce((sum, { deducted }) => sum + deducted, 0);
    const others = licence.others.reduce((sum, { area }) => sum + area, 0);
    expect((licence.inside ?? 0) - off + others).toBeCloseTo(licence.counted ?? -1, 5);
    const open = licence.floor.reduce((sum, { deducted, isOpen }) => (isOpen ? sum + deducted : sum), 0);
    expect((licence.counted ?? 0) + open).toBeCloseTo(licence.countedMost ?? -1, 5);
    expect(licence.groups.reduce((sum, { need }) => sum + (need ?? 0), 0)).toBeCloseTo(licence.need ?? -1, 5);
    expect(licence.groups.reduce((sum, { count }) => sum + count, 0)).toBe(licence.enrolled);
  });
  it('says of each why, and names the rows it goes by', () => {
    for (const { why } of licence.floor)
      expect(why).toMatch(/takes it off \([A-Z]|by the class's answer it |the class has not answered yet|no floor by any rule/);
    expect(licence.sources.length).toBeGreaterThan(0);
    expect(licence.open.length >= line.open.length).toBe(true);
  });
});

// Figures read in the rules themselves: 22 CCR 101238.3 (35 sq ft a child), 101216.3 (12 to a teacher); England 2.3 m².
describe('figures of the rules', () => {
  it('California: 35 sq ft a child and 12 children to a teacher alone', () => {
    const { licence } = sheet({ ...demo, ruleSet: 'us-california' });
    expect((licence.groups[0]?.each ?? 0) / 0.3048 ** 2).toBeCloseTo(35, 9);
    expect(licence.groups[0]?.ratio).toContain('teacher alone 12');
    expect(licence.sources).toEqual(['C09', 'C10', 'D10-california']);
  });
  it('England: 2.3 m² a child of three, one adult to eight', () => {
    const { licence } = sheet({ ...demo, ruleSet: 'england' });
    expect(licence.groups[0]?.each).toBe(2.3);
    expect(licence.groups[0]?.ratio).toBe('1 to 8, with a qualified adult 1 to 13');
    // No text of another country stands on its sheet.
    expect(licence.sources).toContain('D10-england');
    for (const source of licence.sources) expect(sourceText(source), source).toMatch(/England/);
  });
});

describe('what is not known', () => {
  it('stands among the open questions', () => {
    const { licence } = sheet(
      plainRoom({
        ruleSet: 'england',
        adults: [],
        pieces: [{ id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1000, depth: 500 }],
      }),
    );
    expect(licence.open).toEqual([
      'does the floor under open shelves for children count?',
      'how many places to work there are is not reckoned',
      'which adults work in the room?',
      'how many toilets are there for the children?',
      'how many basins are there for the children?',
      'the figures for toilets and basins are from memory: check them',
    ]);
    expect(licence.floor[0]).toMatchObject({ isOpen: true, why: 'the text does not say; the class has not answered yet' });
  });
  it('says that more places to work are not proven, until they are', () => {
    const { line } = sheet(demo);
    const floorPlaces = measuresOf(buildScene(demo)).floorPlaces();
    const asks = (byWork: number, isProven: boolean) =>
      licenceOf(demo, floorPlaces, { ...line, byWork }, isProven).open.filter((question) => question.includes('to work'));
    expect(asks(19, false)).toEqual([
      'is there a place to work for 5 more? Found for 19; how many mats fit at the very most is not proven (class rule)',
    ]);
    expect(asks(30, false)).toEqual(['places to work were found for 30; how many mats fit at the very most is not proven (class rule)']);
    expect(asks(19, true)).toEqual([]);
  });
  it('is told where there is no rule set at all', () => {
    const { licence } = sheet(plainRoom({ ruleSet: 'own' }));
    expect(licence.need).toBe(null);
    expect(licence.open.join(' ')).toContain('choose whose rule counts');
  });
});

it('long names and long lists are cut, and say so', () => {
  expect(short('abcdef', 6)).toBe('abcdef');
  expect(short('abcdefg', 6)).toBe('abcde…');
  const items = Array.from({ length: 9 }, (_, i) => ({ label: `shelf ${i + 1}`, m2: 0.5 }));
  expect(sayItems(items, (m2) => m2.toFixed(2), 40)).toBe('shelf 1 0.50, shelf 2 0.50, shelf 3 0.50 and 6 more');
});

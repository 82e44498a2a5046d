import { boundingBox } from '#model/geometry/polygon.ts';
import type { PlainRoomChange } from '#model/rules/plainRoom.ts';
import type { Scene } from '#model/scene/types.ts';
import { ruleSetOf } from '#model/standards/ruleSets.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { countOf, sayYears } from '../text/sayAges.ts';
import { sayCount } from '../text/sayCount.ts';

/** What a page's room is, beyond what its drawing shows; one sentence each. */
export function sayExample(scene: Scene, change: PlainRoomChange): string[] {
  const { classroom, room } = scene;
  const { children, access, floorWork } = classroom;
  const units = classroom.display.units;
  const box = boundingBox(room.outline);
  const long = (mm: number): string => sayLength(mm, units);
  const groups = children.groups.map(({ count, fromMonths }) => `${sayCount(count, 'child', 'children')} from age ${sayYears(fromMonths)}`);
  const adults = countOf(classroom.adults);
  const facts = [
    `${long(box.maxX - box.minX)} by ${long(box.maxY - box.minY)}; ${groups.join(', ') || 'no children entered'}; ${sayCount(adults, 'adult')}`,
  ];
  if (change.ruleSet !== undefined)
    facts.push(`Rules for the number of children: ${ruleSetOf(classroom.ruleSet)?.name ?? classroom.ruleSet}`);
  if (classroom.exitRules)
    facts.push(`Ways out by ${classroom.exitRules === 'us-ibc' ? 'the International Building Code' : 'Approved Document B, England'}`);
  if (access.wheelchair) facts.push('A wheelchair user is served');
  else if (access.required) facts.push('A fixed accessible route is required');
  if (floorWork.wanted !== null) facts.push(`${sayCount(floorWork.wanted, 'mat')} wanted`);
  const { toilets, basins, survey } = classroom.room;
  if (toilets !== null || basins !== null) facts.push(`${sayCount(toilets ?? 0, 'toilet')}, ${sayCount(basins ?? 0, 'basin')}`);
  if (survey) {
    facts.push(`Taped, wall after wall: ${survey.walls.map(({ length }) => long(length)).join(', ')}`);
    for (const { length } of survey.diagonals ?? []) facts.push(`Taped from corner to corner: ${long(length)}`);
  }
  for (const material of classroom.materials) {
    const { heaviest, smallest, step } = material;
    const said = [
      step === undefined || step === null ? '' : `step ${step}`,
      heaviest === null || heaviest === undefined ? '' : `${heaviest} kg carried at once`,
      smallest === null || smallest === undefined ? '' : `smallest piece ${Array.isArray(smallest) ? smallest.join(' × ') : smallest} mm`,
      material.state === 'out' ? '' : stateWords[material.state],
    ].filter((text) => text !== '' && text !== undefined);
    if (said.length > 0) facts.push(`${material.name}: ${said.join(', ')}`);
  }
  return facts;
}

const stateWords: Readonly<Record<string, string>> = {
  store: 'in store',
  mend: 'being mended',
  make: 'still to be made',
  wanted: 'wanted, not here',
};

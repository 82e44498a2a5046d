import { catalogueMaterials, fromCatalogue } from '#model/catalogue/catalogue.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { fill } from './fill.ts';
import { openMiddle } from './layout.ts';
import { rows } from './rows.ts';
import { room } from './shell.ts';

/** The demo classroom: invented room, people and figures; the materials are the catalogue's. */
export function demoRoom(): ClassroomInput {
  const well = openMiddle();
  return {
    format: 'lowshelf.classroom',
    version: 1,
    name: 'Juniper room',
    children: {
      groups: [
        { id: 'g1', name: 'three-year-olds', fromMonths: 36, toMonths: 48, count: 8 },
        { id: 'g2', name: 'four-year-olds', fromMonths: 48, toMonths: 60, count: 9 },
        { id: 'g3', name: 'five-year-olds', fromMonths: 60, toMonths: 72, count: 7 },
      ],
    },
    adults: [
      { role: 'lead', count: 1 },
      { role: 'assistant', count: 2 },
    ],
    enrolment: [],
    ruleSet: 'england',
    exitRules: 'england-adb',
    room,
    materials: catalogueMaterials.map((m) => fromCatalogue(m.id, m.id)),
    arrangements: [{ id: 'a2', name: 'Open middle', pieces: well, placements: fill(well, rows) }],
    current: 'a2',
  };
}

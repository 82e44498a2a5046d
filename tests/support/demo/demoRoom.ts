import { catalogueMaterials, fromCatalogue } from '#model/catalogue/catalogue.ts';
import type { ClassroomInput, Placement } from '#model/schema/types.ts';
import { fill } from './fill.ts';
import { asItStands, openMiddle } from './layout.ts';
import { rows } from './rows.ts';
import { rowsAsFound } from './rowsAsFound.ts';
import { room } from './shell.ts';

/** The demo classroom: invented room, people and figures; the materials are the catalogue's. */
export function demoRoom(): ClassroomInput {
  const found = asItStands();
  const well = openMiddle();
  const walk = rows.map(({ shelf, side }) => ({ piece: shelf, side }));
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
      { role: 'qualified', count: 1 },
      { role: 'assistant', count: 1 },
    ],
    enrolment: [
      { from: '2026-09-01', groups: mix(8, 9, 7) },
      { from: '2027-04-05', groups: mix(9, 9, 7) },
    ],
    ruleSet: 'england',
    asked: { door_swing: 'count', open_shelf_for_children: 'count', table_chair: 'count', floor_mat: 'count' },
    exitRules: 'england-adb',
    room,
    materials: catalogueMaterials.map((m) => fromCatalogue(m.id, m.id)),
    arrangements: [
      { id: 'a1', name: 'As it stands', pieces: found, placements: crowd(fill(found, rowsAsFound)), walk },
      { id: 'a2', name: 'Open middle', pieces: well, placements: fill(well, rows), walk },
    ],
    current: 'a1',
  };
}

const mix = (threes: number, fours: number, fives: number) => [
  { fromMonths: 36, toMonths: 48, count: threes },
  { fromMonths: 48, toMonths: 60, count: fours },
  { fromMonths: 60, toMonths: 72, count: fives },
];

/** Two trays that were pushed into each other. */
function crowd(placements: Placement[]): Placement[] {
  return placements.map((p) => (p.material === 'cu-cutting' ? { ...p, x: p.x + 130 } : p));
}

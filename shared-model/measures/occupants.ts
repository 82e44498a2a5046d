import { coveredArea } from '../geometry/coverage.ts';
import type { Scene } from '../scene/types.ts';
import type { Zone } from '../schema/types.ts';
import { occupantLoad } from '../standards/occupantLoad.ts';
import { countOf } from './roomNeeds.ts';

/** Zones that the net floor leaves out: ways elsewhere, toilets, closets. */
const notNet: ReadonlySet<Zone['kind']> = new Set<Zone['kind']>(['passage', 'toilet', 'storage']);

/** How many persons a model code reckons with in the room. */
export interface Occupants {
  /** m² net */
  readonly net: number;
  /** m² a person */
  readonly perPerson: number;
  readonly source: string;
  /** Persons, not rounded. */
  readonly load: number;
  /** Children and adults entered. */
  readonly persons: number;
}

/** Null: the walls do not hold. @param own m² a person as the class set it */
export function measureOccupants(scene: Scene, own: number | null = null): Occupants | null {
  const { room, classroom } = scene;
  if (!room.isSound) return null;
  const { groups } = classroom.children;
  const left = classroom.room.zones.filter((zone) => notNet.has(zone.kind)).map((zone) => zone.outline.map(([x, y]) => ({ x, y })));
  const net = room.area - coveredArea(left, room.outline) / 1e6;
  const isDayCare = groups.some((group) => group.count > 0 && group.fromMonths < occupantLoad.dayCare.underMonths);
  const row = isDayCare ? occupantLoad.dayCare : occupantLoad.classroom;
  const perPerson = own ?? row.m2;
  return {
    net,
    perPerson,
    source: own === null ? row.source : 'class rule',
    load: net / perPerson,
    persons: countOf(groups) + countOf(classroom.adults),
  };
}

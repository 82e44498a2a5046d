import { areaWithin } from '../geometry/coverage.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import type { Fixture, Zone } from '../schema/types.ts';
import type { FloorCategory } from '../standards/deductionMatrix.ts';
import { chairFloor } from './chairFloor.ts';

/** A thing on the floor that a rule may take off before it divides. */
export interface FloorItem {
  readonly id: string;
  readonly kind: string;
  readonly label: string;
  /** null: deducted by every rule (a column is no floor), or by none */
  readonly category: FloorCategory | null;
  readonly isNeverFloor: boolean;
  readonly ring: Polygon;
  /** mm² within the room, by itself */
  readonly area: number;
}

const ofZone: Readonly<Record<Zone['kind'], FloorCategory>> = {
  passage: 'passage_to_elsewhere',
  walkway: 'walkway_in_room',
  toilet: 'toilet',
  kitchen: 'kitchen',
  storage: 'closed_storage',
  staff: 'staff_area',
  cots: 'cot_area',
};
/** Fixtures that are no floor at all; a built-in goes by the rule; every other fixture counts as floor. */
const neverFloor: ReadonlySet<Fixture['kind']> = new Set<Fixture['kind']>(['column', 'partition', 'hearth']);

/** Everything on the floor that some rule takes off, chairs as far as they stand beside their table, with its area within the walls; zones first, then doors, fixtures, pieces. */
export function floorItems(scene: Scene): FloorItem[] {
  const { outline, openings } = scene.room;
  const found: Omit<FloorItem, 'area'>[] = scene.classroom.room.zones.map((zone) => ({
    id: zone.id,
    kind: zone.kind,
    label: `${zone.kind} ${zone.id}`,
    category: ofZone[zone.kind],
    isNeverFloor: false,
    ring: zone.outline.map(([x, y]) => ({ x, y })),
  }));
  for (const { id, label, swingFloor } of openings) {
    if (!swingFloor) continue;
    found.push({
      id,
      kind: 'door',
      label: `swing of ${label}`,
      category: 'door_swing',
      isNeverFloor: false,
      ring: swingFloor,
    });
  }
  for (const body of [...scene.bodies].sort((p, q) => Number(p.source === 'piece') - Number(q.source === 'piece'))) {
    const isNeverFloor = body.fixture !== null && neverFloor.has(body.fixture.kind);
    const category = categoryOf(body);
    if (category === null && !isNeverFloor) continue;
    found.push({ id: body.id, kind: body.kind, label: body.label, category, isNeverFloor, ring: body.footprint });
    // Chairs that stand as pieces of their own are among the bodies.
    if (body.kind !== 'table' || standsWithChairs(scene, body)) continue;
    chairFloor(body).forEach((ring, i) => {
      found.push({ id: `${body.id}/chair-${i + 1}`, kind: 'chair', label: `chairs at ${body.label}`, category, isNeverFloor, ring });
    });
  }
  return found.map((item) => ({ ...item, area: areaIn(outline, item.ring) }));
}

/** Whether all that are counted at a table are pieces that name it. */
function standsWithChairs({ bodies }: Scene, table: SceneBody): boolean {
  const said = Object.values(table.piece?.seatSides ?? {}).reduce<number>((sum, count) => sum + (count ?? 0), 0);
  return said > 0 && bodies.filter(({ kind, piece }) => kind === 'seat' && piece?.table === table.id).length >= said;
}

const areas = new WeakMap<Polygon, { readonly outline: Polygon; readonly area: number }>();

/** mm² of a ring within the room; a piece that did not move has what it had. */
function areaIn(outline: Polygon, ring: Polygon): number {
  const before = areas.get(ring);
  if (before?.outline === outline) return before.area;
  const area = areaWithin(ring, outline);
  areas.set(ring, { outline, area });
  return area;
}

function categoryOf({ piece, fixture }: SceneBody): FloorCategory | null {
  if (fixture) return fixture.kind === 'built-in' ? 'built_in_cabinet' : null;
  switch (piece?.kind) {
    case 'shelf':
      if (piece.closed) return 'closed_storage';
      return piece.for === 'children' ? 'open_shelf_for_children' : 'shelf_not_for_children';
    case 'table':
    case 'seat':
    case 'adult-seat':
      return 'table_chair';
    case 'rug':
    case 'mat-stand':
      return 'floor_mat';
    default:
      return null;
  }
}

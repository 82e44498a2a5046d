import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import { edges, type Polygon } from '#model/geometry/polygon.ts';
import { distance, type Point, type Segment } from '#model/geometry/vec.ts';
import { type SeatStrip, stripAt } from '#model/measures/seats.ts';
import type { SceneBody, SceneRoom } from '#model/scene/types.ts';
import type { TurnedBox } from './box.ts';
import { closest, nearestOn } from './snap.ts';

/** A place too narrow, as the plan shows it: an arrow from thing to thing. */
export interface NarrowPlace {
  readonly a: Point;
  readonly b: Point;
  /** mm */
  readonly measured: number;
  readonly needed: number;
  /** mm along the gap, for the tinted strip */
  readonly length: number;
  /** Floor kept for children at a table, where the place ends at it and not at the table. */
  readonly kept: readonly Polygon[];
}

interface Obstacles {
  readonly bodyById: (id: string) => SceneBody | undefined;
  readonly room: SceneRoom;
  readonly strips: readonly SeatStrip[];
}

/** It is about how wide a way is: what is to be seen is the place where it is narrow, not only what it leads to. */
export const isOfWidth = ({ rule }: Pick<Finding, 'rule'>): boolean => rule === 'way/width' || rule === 'way/narrow';

/** mm: two measured places nearer than this are the same. */
const SAME_PLACE = 5;

/** The narrow place a finding is about; null for findings about something else. */
export function narrowPlaceOf(finding: Finding, report: Report, obstacles: Obstacles): NarrowPlace | null {
  const { measured, needed, at } = finding;
  if (!finding.rule.startsWith('way/') || !at || measured?.unit !== 'mm' || needed?.unit !== 'mm') return null;
  const ends = endsInReport(report, at) ?? endsFromSubjects(finding, at, obstacles);
  if (!ends || distance(ends[0], ends[1]) < 1) return null;
  const kept = ends.flatMap((end): Polygon[] => {
    const at = stripAt(obstacles.strips, end);
    return at ? [at.strip] : [];
  });
  return { a: ends[0], b: ends[1], measured: measured.value, needed: needed.value, length: lengthInReport(report, at), kept };
}

type Ends = readonly [Point, Point];

function endsInReport(report: Report, at: Point): Ends | null {
  for (const way of listIn(report, 'ways')) {
    const [p, q] = Array.isArray(way.between) ? (way.between as unknown[]) : [];
    if (isPoint(way.at) && distance(way.at, at) < SAME_PLACE && isPoint(p) && isPoint(q)) return [p, q];
  }
  return null;
}

function lengthInReport(report: Report, at: Point): number {
  const found = listIn(report, 'narrow').find((gap) => isPoint(gap.at) && distance(gap.at, at) < SAME_PLACE);
  return typeof found?.length === 'number' ? Math.max(200, found.length) : 300;
}

/** The nearest points of the two things on either side of the place; of a table in use also of its children. */
function endsFromSubjects(finding: Finding, at: Point, { bodyById, room, strips }: Obstacles): Ends | null {
  const points = finding.subjects.flatMap((id): Point[] => {
    const body = bodyById(id);
    const wall = room.walls.find((w) => w.id === id);
    const seated = finding.rule === 'way/narrow' ? strips.filter(({ table }) => table.id === id) : [];
    const segments: readonly Segment[] = body ? [body.footprint, ...seated.map(({ strip }) => strip)].flatMap(edges) : wall ? [wall] : [];
    const nearest = closest(
      segments.map((segment) => nearestOn(segment, at)),
      (p) => distance(p, at),
    );
    return nearest ? [nearest] : [];
  });
  const [p, q] = points;
  return p && q ? [p, q] : null;
}

export interface MatPlace extends TurnedBox {
  readonly number: number;
}

/** Mats that fit, as the report lays them. */
export const matsIn = (report: Report | null): readonly MatPlace[] => matsLaid(report?.measures.mats);

/** The same of the report's measure of mats alone. */
export function matsLaid(mats: unknown): readonly MatPlace[] {
  if (!isRecord(mats) || !Array.isArray(mats.places)) return [];
  return (mats.places as unknown[]).flatMap((place, i): MatPlace[] => {
    if (!isRecord(place)) return [];
    const { x, y, width, depth, rotation } = place;
    if ([x, y, width, depth, rotation].some((value) => typeof value !== 'number')) return [];
    return [{ x, y, width, depth, rotation, number: i + 1 } as MatPlace];
  });
}

/** Floor that no adult sees from where they watch: rings in mm. */
export interface UnseenPatch {
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** As the report lists it, the largest first. */
export function unseenIn(report: Report | null): readonly UnseenPatch[] {
  const sight = report?.measures.sight;
  if (!isRecord(sight) || !Array.isArray(sight.hidden)) return [];
  return sight.hidden.filter(isRecord).flatMap(({ outline, holes }): UnseenPatch[] => {
    const ring = ringFrom(outline);
    return ring.length < 3 ? [] : [{ outline: ring, holes: Array.isArray(holes) ? holes.map(ringFrom) : [] }];
  });
}

function ringFrom(corners: unknown): Point[] {
  if (!Array.isArray(corners)) return [];
  return corners.flatMap((corner: unknown): Point[] => {
    const [x, y]: unknown[] = Array.isArray(corner) ? corner : [];
    return typeof x === 'number' && typeof y === 'number' ? [{ x, y }] : [];
  });
}

/** "at least" until it is proven that no more mats fit; "" once it is, or where none are reckoned. */
export function leastWordIn(report: Report | null): string {
  const mats = report?.measures.mats;
  return isRecord(mats) && typeof mats.count === 'number' && mats.proven !== true ? 'at least' : '';
}

export function matCountIn(report: Report | null): number | null {
  const mats = report?.measures.mats;
  return isRecord(mats) && typeof mats.count === 'number' ? mats.count : null;
}

function listIn(report: Report, key: string): readonly Record<string, unknown>[] {
  const list: unknown = report.measures[key];
  return Array.isArray(list) ? list.filter(isRecord) : [];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function isPoint(value: unknown): value is Point {
  return isRecord(value) && typeof value.x === 'number' && typeof value.y === 'number';
}

import { add, cross, dot, type Point, type Segment, scale } from '#model/geometry/vec.ts';
import { axesOf, cornersOf, PARALLEL, spanAlong, type TurnedBox } from './box.ts';

/** Something of a row: a thing or, by the corner it starts at, a wall. */
export interface RowEnd {
  readonly kind: 'thing' | 'wall';
  readonly id: string;
}

/** A gap of a row: what stands on both sides, and where it is (mm). */
export interface RowGap {
  readonly mm: number;
  readonly between: readonly [RowEnd, RowEnd];
  readonly along: Segment;
}

export interface GapPull {
  readonly axis: Point;
  /** mm along the axis */
  readonly by: number;
  /** The gaps beside the thing, once it lies there. */
  readonly own: readonly RowGap[];
  /** The gap of the row that they are like; null: like each other. */
  readonly like: RowGap | null;
}

interface Member {
  readonly end: RowEnd;
  readonly from: number;
  readonly to: number;
  /** its middle across the row */
  readonly across: number;
}

interface RowScene {
  readonly walls: readonly (Segment & { readonly inward: Point; readonly corner?: string })[];
  readonly others: readonly (TurnedBox & { readonly id?: string })[];
}

/** mm: what is nearer stands together, what is farther is no gap of a row */
const LEAST = 50;
const MOST = 4000;

/** Where a thing would have, to what it stands beside, the same gap as two others of its row have between them, or the same on both sides. */
export function gapPulls(box: TurnedBox, scene: RowScene, tolerance: number): GapPull[] {
  const { u, v } = axesOf(box.rotation);
  const own = cornersOf(box);
  return [...alongRow(u, v, own, box, scene, tolerance), ...alongRow(v, u, own, box, scene, tolerance)];
}

function alongRow(axis: Point, across: Point, own: readonly Point[], box: TurnedBox, scene: RowScene, tolerance: number): GapPull[] {
  const [from, to] = spanAlong(own, axis);
  const ownAcross = spanAlong(own, across);
  const members = membersOf(axis, across, ownAcross, scene);
  const centre = (from + to) / 2;
  let left: Member | null = null;
  let right: Member | null = null;
  for (const member of members) {
    if (member.to <= centre && (!left || member.to > left.to)) left = member;
    if (member.from >= centre && (!right || member.from < right.from)) right = member;
  }
  const at = dot(box, across);
  const place = (p: number, q: number): Segment => ({
    a: add(scale(axis, p), scale(across, at)),
    b: add(scale(axis, q), scale(across, at)),
  });
  const me: RowEnd = { kind: 'thing', id: '' };
  const leftGap = (member: Member, by: number): RowGap => ({
    mm: from + by - member.to,
    between: [member.end, me],
    along: place(member.to, from + by),
  });
  const rightGap = (member: Member, by: number): RowGap => ({
    mm: member.from - to - by,
    between: [me, member.end],
    along: place(to + by, member.from),
  });
  const pulls: GapPull[] = [];
  // The middle of the room is nobody's gap.
  if (left && right && !(left.end.kind === 'wall' && right.end.kind === 'wall')) {
    const by = (left.to + right.from - from - to) / 2;
    const gap = leftGap(left, by);
    if (Math.abs(by) <= tolerance && gap.mm >= LEAST) pulls.push({ axis, by, own: [gap, rightGap(right, by)], like: null });
  }
  for (const gap of gapsOf(members, axis, across, centre)) {
    if (left) {
      const by = left.to + gap.mm - from;
      if (Math.abs(by) <= tolerance) pulls.push({ axis, by, own: [leftGap(left, by)], like: gap });
    }
    if (right) {
      const by = right.from - gap.mm - to;
      if (Math.abs(by) <= tolerance) pulls.push({ axis, by, own: [rightGap(right, by)], like: gap });
    }
  }
  return pulls;
}

/** What stands in the row of the thing, and the walls that end it, in order. */
function membersOf(axis: Point, across: Point, own: readonly [number, number], scene: RowScene): Member[] {
  const isBeside = ([low, high]: readonly [number, number]): boolean => low < own[1] - 1 && high > own[0] + 1;
  const members: Member[] = [];
  for (const other of scene.others) {
    const { u } = axesOf(other.rotation);
    if (Math.abs(dot(u, axis)) > PARALLEL && Math.abs(cross(u, axis)) > PARALLEL) continue;
    const corners = cornersOf(other);
    const span = spanAlong(corners, across);
    if (!isBeside(span)) continue;
    const [from, to] = spanAlong(corners, axis);
    members.push({ end: { kind: 'thing', id: other.id ?? '' }, from, to, across: (span[0] + span[1]) / 2 });
  }
  for (const wall of scene.walls) {
    if (Math.abs(cross(wall.inward, axis)) > PARALLEL) continue;
    const span = spanAlong([wall.a, wall.b], across);
    if (!isBeside(span)) continue;
    const at = dot(wall.a, axis);
    members.push({ end: { kind: 'wall', id: wall.corner ?? '' }, from: at, to: at, across: (own[0] + own[1]) / 2 });
  }
  return members.sort((p, q) => p.from - q.from);
}

/** Gaps between one and the next, without the one in which the thing itself is. */
function gapsOf(members: readonly Member[], axis: Point, across: Point, centre: number): RowGap[] {
  const gaps: RowGap[] = [];
  let last: Member | null = null;
  for (const member of members) {
    if (last) {
      const mm = member.from - last.to;
      const isOwn = last.to <= centre && member.from >= centre;
      if (mm >= LEAST && mm <= MOST && !isOwn)
        gaps.push({ mm, between: [last.end, member.end], along: between(last, member, axis, across) });
    }
    if (!last || member.to > last.to) last = member;
  }
  return gaps;
}

function between(p: Member, q: Member, axis: Point, across: Point): Segment {
  const at = (p.across + q.across) / 2;
  return { a: add(scale(axis, p.to), scale(across, at)), b: add(scale(axis, q.from), scale(across, at)) };
}

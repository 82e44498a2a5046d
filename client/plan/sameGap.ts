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

type Span = readonly [number, number];

interface Member {
  readonly end: RowEnd;
  readonly from: number;
  readonly to: number;
  /** from where to where it reaches across the row */
  readonly side: Span;
  /** It stands before the thing itself, and does not only reach into its row. */
  readonly isFacing: boolean;
}

interface RowScene {
  readonly walls: readonly (Segment & { readonly inward: Point; readonly corner?: string })[];
  readonly others: readonly (TurnedBox & { readonly id?: string })[];
}

/** mm: what is nearer stands together (no hand goes in between), what is farther is no gap of a row */
const LEAST = 100;
const MOST = 4000;
/** Two face each other when so much of the shorter side has the other before it. */
const FACING = 0.5;

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
  // What only reaches into the row ends the gap, and gives none.
  if (!left?.isFacing) left = null;
  if (!right?.isFacing) right = null;
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
function membersOf(axis: Point, across: Point, own: Span, scene: RowScene): Member[] {
  const members: Member[] = [];
  const addIf = (kind: RowEnd['kind'], id: string | undefined, corners: readonly Point[]): void => {
    const side = spanAlong(corners, across);
    if (sharedBy(side, own) <= 1) return;
    const [from, to] = spanAlong(corners, axis);
    members.push({ end: { kind, id: id ?? '' }, from, to, side, isFacing: face(side, own) });
  };
  for (const other of scene.others) {
    const { u } = axesOf(other.rotation);
    if (Math.abs(dot(u, axis)) > PARALLEL && Math.abs(cross(u, axis)) > PARALLEL) continue;
    addIf('thing', other.id, cornersOf(other));
  }
  for (const wall of scene.walls) {
    if (Math.abs(cross(wall.inward, axis)) > PARALLEL) continue;
    addIf('wall', wall.corner, [wall.a, wall.b]);
  }
  return members.sort((p, q) => p.from - q.from);
}

/** mm that two have side by side */
const sharedBy = (p: Span, q: Span): number => Math.min(p[1], q[1]) - Math.max(p[0], q[0]);
const face = (p: Span, q: Span): boolean => sharedBy(p, q) >= FACING * Math.min(p[1] - p[0], q[1] - q[0]);

/** Gaps between one and the next that face each other, without the one in which the thing itself is. */
function gapsOf(members: readonly Member[], axis: Point, across: Point, centre: number): RowGap[] {
  const gaps: RowGap[] = [];
  let last: Member | null = null;
  for (const member of members) {
    if (last) {
      const mm = member.from - last.to;
      const isOwn = last.to <= centre && member.from >= centre;
      if (mm >= LEAST && mm <= MOST && !isOwn && last.isFacing && member.isFacing && face(last.side, member.side))
        gaps.push({ mm, between: [last.end, member.end], along: between(last, member, axis, across) });
    }
    if (!last || member.to > last.to) last = member;
  }
  return gaps;
}

function between(p: Member, q: Member, axis: Point, across: Point): Segment {
  // Where both are.
  const at = (Math.max(p.side[0], q.side[0]) + Math.min(p.side[1], q.side[1])) / 2;
  return { a: add(scale(axis, p.to), scale(across, at)), b: add(scale(axis, q.from), scale(across, at)) };
}

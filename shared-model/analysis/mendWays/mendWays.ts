import { applyEdits } from '../../findings/applyEdits.ts';
import type { Edit } from '../../findings/edit.ts';
import { type Finding, findingKey } from '../../findings/finding.ts';
import { measuresOf } from '../../measures/measures.ts';
import { buildScene, pickArrangement } from '../../scene/build.ts';
import type { Classroom } from '../../schema/types.ts';
import type { Report } from '../report.ts';
import { RunningAnalysis } from '../running.ts';
import { mustsOf } from '../soundFixes.ts';
import { type Layout, totalOf } from './layout.ts';
import { oneAlone } from './oneAlone.ts';
import { type NewMust, Search, type SearchProgress } from './search.ts';
import { frontKey, type Short, Stage } from './stage.ts';
import { tighten } from './tighten.ts';

/**
 * narrowest: the ways held back by the narrowest place that a move can widen; no other gets worse. must: every way, but
 * only as wide as it must be, where the class asks for more beside it. Absent: every way, as wide as is asked.
 */
export type MendOnly = 'narrowest' | 'must';

export interface MendOptions {
  /** Absent: the current one. */
  readonly arrangement?: string | null;
  /** Ids of pieces that stay where they are, beside those that are locked. */
  readonly keep?: readonly string[];
  readonly only?: MendOnly;
  /** How many pieces may move at most; a table with its chairs counts as one. */
  readonly most?: number;
  /** How often the ways may be measured. */
  readonly looks?: number;
  /** The same for places on the grid. */
  readonly gridLooks?: number;
}

/** A piece that moves, with the chairs that belong to it. mm. */
export interface MendMove {
  readonly piece: string;
  readonly label: string;
  /** Chairs that go with it. */
  readonly chairs: number;
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  readonly by: number;
}

/** A way that stays too narrow with every piece that may be moved out of the room. */
export type Held = Pick<Short, 'label' | 'width' | 'between'>;

/** The one place that is widened where not every way was asked for; `at` in mm on the plan. */
type NarrowestPlace = Held & Pick<Short, 'at'>;

/** How far the search is. */
export interface MendProgress extends SearchProgress {
  /** null: every way is asked for, or which place is the narrowest is not known yet. */
  readonly place: NarrowestPlace | null;
  /** Holds, and a smaller change is being looked for; null: none yet. */
  readonly best: Found | null;
}

type Found = Extract<Mend, { readonly end: 'found' }>;

export type Mend =
  | {
      readonly end: 'found';
      /** The place that is widened where not every way was asked for. */
      readonly place: (NarrowestPlace & Pick<Narrowest, 'enough'>) | null;
      /** mm that every way is wide then, where only what must be was asked for. */
      readonly least: number | null;
      readonly moves: readonly MendMove[];
      /** mm, all moves together */
      readonly total: number;
      readonly edits: readonly Edit[];
      /** Findings that are gone then, and those that come with it (none of them a must). */
      readonly mends: readonly Finding[];
      readonly brings: readonly Finding[];
      /** Narrow places that hold nobody up, so that they may stay; the new ones among them are in `brings` too. */
      readonly stays: readonly Finding[];
      readonly looks: number;
    }
  /** Every way is wide enough already. */
  | { readonly end: 'fine' }
  /** The ways are not known. */
  | { readonly end: 'cannot-tell'; readonly missing: string }
  /** Nothing may be moved. */
  | { readonly end: 'nothing-free' }
  /** Ways that no move widens. */
  | { readonly end: 'fixed'; readonly held: readonly Held[] }
  /** More pieces than may move would have to; `ways`: to what, each held back by another piece. */
  | { readonly end: 'apart'; readonly pieces: number; readonly ways: readonly string[]; readonly most: number; readonly looks: number }
  /** All that is tried was tried; `looks`: only what moves less than `total` mm in all. */
  | { readonly end: 'all'; readonly most: number; readonly looks: number }
  | { readonly end: 'looks'; readonly total: number; readonly most: number; readonly looks: number };

/** mm */
const SAME_PLACE = 20;
/** So many pieces at most: more is another arrangement, not a mend. */
const MOST = 3;
/** So often the ways are measured at most; some minutes on a tablet. */
const LOOKS = 10_000;
/** For places on the grid: fewer when something is found already. */
const GRID_LOOKS = { found: 1_000, none: 3_000 };
/** For one of the pieces alone, where several were found. */
const ALONE_LOOKS = 1_000;

/**
 * Looks for the smallest change of places after which every way is as wide as `way/width` and `way/narrow` ask and no
 * new must has come: at most three unlocked pieces, none turned, each moved at most 500 mm or flush to its nearest wall.
 * Things stay out of each other, and of the 483 mm that seated children fill behind a table's edge, or no deeper in
 * than they were (`Standing`); a layout that takes more is none, however small.
 *
 * What is tried, in this order:
 * 1. A tree of layouts, the smallest total first. A piece's first move is one of a finite list (`Moves.first`): to where
 *    it is as far as asked from something, or touches it, reckoned where the pieces moved before it stand then; a second
 *    move, square to the first, may follow (`Moves.second`). Only pieces that have a part in what is wrong are moved, which
 *    loses nothing (see `Search`). What is found here is minimal: no layout of the tree holds with a smaller total.
 * 2. The same with the places of a 100 mm grid, for a counted number of looks, and only for a smaller total.
 * 3. Where several pieces move in what was found: each of them alone on a 40 mm grid, for a counted number of looks
 *    (`oneAlone`), and only for a smaller total.
 * 4. Where only what must be is asked for: the same for all that is asked, if that moves less.
 * What is found is each time made shorter in steps of down to 1 mm as long as it holds (`tighten`).
 * Every answer has passed a whole `analyse`: no must that was not there before, no way short. Ways left as they are need
 * not be mended, but get no worse.
 *
 * Told in slices: each step is one measurement of the ways (some ms). Counted, not timed: the same answer everywhere.
 */
export function* mendWays(classroom: Classroom, options: MendOptions = {}): Generator<MendProgress, Mend> {
  const arrangement = pickArrangement(classroom, options.arrangement);
  if (!arrangement) throw new Error('a classroom has at least one arrangement');
  const most = options.most ?? MOST;
  const missing = missingOf(classroom, arrangement.id);
  if (missing !== null) return { end: 'cannot-tell', missing };
  const left = leftFronts(classroom, arrangement.id);
  const keep = new Set(options.keep);
  const isLeast = options.only === 'must';
  const access = isLeast ? leastOf(classroom.access) : classroom.access;
  const asked = new Stage(classroom, arrangement.id, keep, (front) => (left.has(front) ? 'before' : null), access);
  const short = asked.shortIn(asked.sceneAt(new Map()));
  if (short.length === 0) return { end: 'fine' };
  if (asked.free.length === 0) return { end: 'nothing-free' };
  const held = asked.shortIn(asked.sceneAt(new Map(), new Set(asked.free.map(({ id }) => id))));
  const isHeld = ({ key }: Short): boolean => held.some((other) => other.key === key);
  const narrowest =
    options.only === 'narrowest'
      ? narrowestOf(
          asked,
          short.filter((one) => !isHeld(one)),
        )
      : null;
  if (held.length > 0 && !narrowest) return { end: 'fixed', held: held.map(({ label, width, between }) => ({ label, width, between })) };
  const enoughFor = (front: string): number | 'before' | null => (narrowest?.fronts.has(front) ? narrowest.enough : 'before');
  const stage = narrowest ? new Stage(classroom, arrangement.id, keep, enoughFor) : asked;

  // Which place it is, is told before the work begins.
  if (narrowest) yield { looks: 0, total: 0, place: narrowest.place, best: null };
  const before = new RunningAnalysis().analyse(classroom, { arrangement: arrangement.id });
  // Where only what must be is asked for, none of the ways may be a must in the end, whoever else has a way round.
  const isKnown = ({ severity, rule, leftReason }: Finding): boolean =>
    severity === 'must' && !(isLeast && leftReason === null && askedOfWays.has(rule));
  const known = new Set(before.findings.filter(isKnown).map(({ key }) => key));
  const running = new RunningAnalysis();
  const newMust = (layout: Layout): NewMust | null => findNewMust(stage, known, running, layout);
  const search = new Search(stage, { most, newMust });
  const place = narrowest && { ...narrowest.place, enough: narrowest.enough };
  const tell = tellAll(narrowest?.place ?? null);
  const exact = yield* tell(search.run({ looks: options.looks ?? LOOKS, below: Infinity, hasGrid: false }), null);
  if (exact.end === 'apart') return { end: 'apart', pieces: exact.pieces, ways: exact.ways, most, looks: search.looks };
  const least = isLeast ? classroom.access.leastWidth : null;
  const foundAt = (layout: Layout): Found => found(stage, before, layout, { looks: search.looks, place, least });
  // What holds is told before it is made shorter: who stops the search then keeps it.
  const tightened = function* (layout: Layout): Generator<MendProgress, Found> {
    const first = foundAt(layout);
    const tight = yield* tell(tighten(search, layout), first);
    return newMust(tight) === null ? foundAt(tight) : foundAt(layout);
  };
  let best = exact.end === 'found' ? yield* tightened(exact.layout) : null;
  const gridLooks = options.gridLooks ?? (best ? GRID_LOOKS.found : GRID_LOOKS.none);
  const grid = yield* tell(search.run({ looks: gridLooks, below: best ? best.total - 1 : Infinity, hasGrid: true }), best);
  if (grid.end === 'found') best = yield* tightened(grid.layout);
  if (best && best.moves.length > 1) {
    const units = best.moves.map(({ piece }) => piece);
    const limits = { below: best.total - 1, looks: options.gridLooks ?? ALONE_LOOKS };
    const alone = yield* tell(
      oneAlone(search, units, limits, (layout) => newMust(layout) === null),
      best,
    );
    if (alone) best = yield* tightened(alone);
  }
  // What widens all as asked widens it as it must be: never less is moved for that than for this.
  const whole = access === classroom.access ? null : yield* tell(mendWays(classroom, inFull(options)), best, search.looks);
  const looks = (): number => search.looks + (whole && 'looks' in whole ? whole.looks : 0);
  if (whole?.end === 'found' && whole.total < (best?.total ?? Infinity)) best = yield* tightened(layoutOf(whole.moves));
  if (best) return { ...best, looks: looks() };
  if (exact.end === 'looks') return { end: 'looks', total: exact.total, most, looks: looks() };
  return { end: 'all', most, looks: looks() };
}

function inFull({ only: _, ...options }: MendOptions): MendOptions {
  return options;
}

const layoutOf = (moves: readonly MendMove[]): Layout =>
  new Map(moves.map(({ piece, from, to }) => [piece, { x: to.x - from.x, y: to.y - from.y }]));

const askedOfWays: ReadonlySet<string> = new Set(['way/width', 'way/narrow']);

/** No more asked of the ways than what must be. */
function leastOf(access: Classroom['access']): Classroom['access'] {
  if (access.required || access.wheelchair) return access;
  const { leastWidth } = access;
  return { ...access, routeWidth: leastWidth, pinchWidth: Math.min(access.pinchWidth, leastWidth) };
}

/** Steps of one search after the other, with what is known beside them. What was told of the first is not taken back by a second. */
function tellAll(place: NarrowestPlace | null) {
  let far = 0;
  return function* <T>(work: Generator<SearchProgress, T>, best: Found | null, looksBefore = 0): Generator<MendProgress, T> {
    for (let step = work.next(); ; step = work.next()) {
      if (step.done) return step.value;
      far = Math.max(far, step.value.total);
      yield { looks: looksBefore + step.value.looks, total: far, place, best };
    }
  };
}

/** All of it at once, for who can wait. */
export function mendWaysNow(classroom: Classroom, options: MendOptions = {}): Mend {
  const work = mendWays(classroom, options);
  for (let step = work.next(); ; step = work.next()) if (step.done) return step.value;
}

function missingOf(classroom: Classroom, arrangement: string): string | null {
  const { room } = buildScene(classroom, arrangement);
  if (!room.isSound) return 'walls that close and do not cross';
  return room.openings.some((opening) => opening.isWayIn) ? null : 'where the doors and passages are';
}

interface Narrowest {
  readonly place: NarrowestPlace;
  /** Whose way it holds back. */
  readonly fronts: ReadonlySet<string>;
  /** mm: what the rest of these ways allows; null: as much as the checks ask. */
  readonly enough: number | null;
}

function narrowestOf(stage: Stage, short: readonly Short[]): Narrowest | null {
  const [first, ...others] = short;
  if (!first) return null;
  const worst = others.reduce((least, one) => (one.width < least.width ? one : least), first);
  const isThere = ({ at }: Short): boolean => Math.hypot(at.x - worst.at.x, at.y - worst.at.y) < SAME_PLACE;
  const fronts = new Set(short.filter(isThere).map(({ key }) => key));
  const out = new Set(worst.between.flatMap((id) => stage.freeUnitOf(id)?.id ?? []));
  const { label, width, between, at } = worst;
  // Without the two things the ways are as wide as the rest of them allows; a front that is gone with them says nothing.
  const rest = out.size === 0 ? [] : stage.shortIn(stage.sceneAt(new Map(), out)).filter(({ key }) => fronts.has(key));
  const least = Math.min(...rest.map((one) => one.width));
  return { place: { label, width, between, at }, fronts, enough: Number.isFinite(least) && least > width + 1 ? least : null };
}

/** Fronts whose way was left as it is, with a reason. */
function leftFronts(classroom: Classroom, arrangement: string): Set<string> {
  const left = new Set(classroom.left.map(({ key }) => key));
  if (left.size === 0) return new Set();
  const ways = measuresOf(buildScene(classroom, arrangement)).ways().ways;
  const keyOf = ({ to, from, side }: (typeof ways)[number]): string =>
    findingKey('way/width', { subjects: from === null ? [to] : [to, from], ...(side && { part: side }) });
  return new Set(ways.filter((way) => left.has(keyOf(way))).map(frontKey));
}

function findNewMust(stage: Stage, known: ReadonlySet<string>, running: RunningAnalysis, layout: Layout): NewMust | null {
  const { id } = stage.arrangement;
  const isNew = ({ key }: Finding): boolean => !known.has(key);
  const fresh = mustsOf(running.moveTo(stage.classroomAt(layout), id)).find(isNew);
  if (!fresh) return null;
  const isThere = (without: ReadonlySet<string>): boolean =>
    mustsOf(running.moveTo(stage.classroomAt(layout, without), id)).some(({ key }) => key === fresh.key);
  return { subjects: fresh.subjects, isThere };
}

function found(stage: Stage, before: Report, layout: Layout, told: Pick<Found, 'looks' | 'place' | 'least'>): Found {
  const moves = [...layout].flatMap(([id, shift]): MendMove[] => {
    const unit = stage.freeById.get(id);
    const [body] = unit?.bodies ?? [];
    if (!unit || !body) return [];
    const from = body.center;
    const to = { x: from.x + shift.x, y: from.y + shift.y };
    return [{ piece: id, label: unit.label, chairs: unit.bodies.length - 1, from, to, by: Math.hypot(shift.x, shift.y) }];
  });
  const edits = [...layout].flatMap(([id, { x, y }]): Edit[] =>
    (stage.freeById.get(id)?.bodies ?? []).map(({ id: piece, center }) => ({ do: 'move-piece', piece, x: center.x + x, y: center.y + y })),
  );
  const edited = applyEdits(stage.classroom, stage.arrangement.id, edits);
  const after = new RunningAnalysis().analyse(edited, { arrangement: stage.arrangement.id });
  const problems = (report: Report): Finding[] => report.findings.filter(({ outcome }) => outcome === 'problem');
  const [was, is] = [before, after].map((report) => new Set(problems(report).map(({ key }) => key)));
  return {
    ...told,
    end: 'found',
    moves,
    total: totalOf(layout),
    edits,
    mends: problems(before).filter(({ key }) => !is?.has(key)),
    brings: problems(after).filter(({ key }) => !was?.has(key)),
    stays: problems(after).filter(({ rule, severity }) => rule === 'way/narrow' && severity === 'note'),
  };
}

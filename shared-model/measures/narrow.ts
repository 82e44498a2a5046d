import { distanceToPart, type Part } from '../geometry/parts.ts';
import { type Box, boundingBox, grownBox } from '../geometry/polygon.ts';
import { separate } from '../geometry/separation.ts';
import { alongOf, middleOfEnd, type Stretch, type StretchEnd } from '../geometry/stretch.ts';
import { add, type Point, scale } from '../geometry/vec.ts';
import { localValues } from './fieldLocals.ts';
import { memberHolding, type NarrowMember, type NarrowPlace, placeFinder } from './narrowPlaces.ts';
import type { Way } from './ways.ts';
import type { WaysField } from './waysField.ts';
import { doorDiscs } from './waysFronts.ts';
import type { Pinches } from './waysJudged.ts';

/** A place narrower than the route, and what it does to people. */
export interface Narrow extends NarrowPlace {
  /** `way/narrow` judges it: it holds back a way, or makes a walk longer. */
  readonly matters: boolean;
  /** The ways it is the narrowest place of. */
  readonly holdsBack: readonly Way[];
  /** Of a place with several stretches the narrowest that holds back a way: the others are not on it. */
  readonly heldAt: NarrowMember | null;
  /** It satisfies the exception: wide and short enough, and far enough from the next. */
  readonly isPinch: boolean;
}

/** mm: the body whose walks count; a child of three is about this wide. Class rule. */
const BODY = 300;

/** Every narrow place with what it does; `ways` and `pinches` measured on the same field. */
export function judgeNarrow(
  field: WaysField,
  places: readonly NarrowPlace[],
  ways: readonly Way[],
  pinches: Pinches,
  routeMeets: number,
): Narrow[] {
  const held = new Map<NarrowPlace, Way[]>();
  const placeHolding = placeFinder(places, routeMeets);
  for (const way of ways) {
    if (way.width >= routeMeets - 1e-6) continue;
    const place = placeHolding(way.bound);
    if (!place) continue;
    const list = held.get(place);
    if (list) list.push(way);
    else held.set(place, [way]);
  }
  const passed = walkedThrough(field, places);
  return places.map((place, i): Narrow => {
    const holdsBack = held.get(place) ?? none;
    const near = pinches.tooNear.get(place);
    const isPinch =
      near !== undefined && (near.size === 0 || (holdsBack.length > 0 && holdsBack.every((w) => w.judged >= routeMeets - 1e-6)));
    const { gap, between, width, length, at, stretches, members } = place;
    if (holdsBack.length === 0) return holdingNothing(place, isPinch, passed[i] === true);
    // Field by field: there are hundreds at each frame, and a spread takes several times the room.
    return {
      gap,
      between,
      width,
      length,
      at,
      stretches,
      members,
      holdsBack,
      heldAt: narrowestHeld(place, holdsBack),
      isPinch,
      matters: true,
    };
  });
}

const none: readonly Way[] = [];
const unheld = new WeakMap<NarrowPlace, Narrow>();

/** The same object at each step of a drag, as long as the same is known of the place. */
function holdingNothing(place: NarrowPlace, isPinch: boolean, matters: boolean): Narrow {
  const known = unheld.get(place);
  if (known?.isPinch === isPinch && known.matters === matters) return known;
  const { gap, between, width, length, at, stretches, members } = place;
  const narrow: Narrow = { gap, between, width, length, at, stretches, members, holdsBack: none, heldAt: null, isPinch, matters };
  unheld.set(place, narrow);
  return narrow;
}

function narrowestHeld(place: NarrowPlace, ways: readonly Way[]): NarrowMember | null {
  const members = ways.flatMap((way) => memberHolding(place, way.bound) ?? []);
  return members.reduce<NarrowMember | null>((least, member) => (least && least.width <= member.width ? least : member), null);
}

/** For each place: a 300 mm body fits through, and reaches floor on both sides. Closing such a place lengthens a walk. */
function walkedThrough(field: WaysField, places: readonly NarrowPlace[]): boolean[] {
  const sides = places.map((place) => (place.width < BODY ? [] : endPoints(field, place.stretches)));
  const sources = doorDiscs(field, BODY).filter((disc) => disc.diameter >= BODY - 1e-6);
  const flat = sides.flat();
  if (flat.length === 0 || sources.length === 0) return places.map(() => false);
  const points = [...sources.map((s) => s.center), ...flat.flatMap((s) => s ?? [])];
  const cuts = separate(
    field.parts,
    field.gaps(BODY - 1e-6),
    points,
    sources.map((_, k) => k),
  );
  let next = sources.length;
  const isReached = flat.map((side) => {
    if (!side) return false;
    const at = next++;
    return cuts.some((cut) => cut[at] === null);
  });
  let k = 0;
  return sides.map((ends) => {
    const reached = ends.map(() => isReached[k++]);
    return reached.length > 0 && reached.every(Boolean);
  });
}

const ends = localValues<Stretch, readonly (Point | null)[]>();

const endPoints = (field: WaysField, stretches: readonly Stretch[]): (Point | null)[] =>
  stretches.flatMap((stretch) => {
    const known = ends(field, BODY);
    return known.get(stretch) ?? known.set(stretch, endsOf(field, stretch), boxRoundEnds(stretch));
  });

/** Where a body stands just beyond each end of a stretch; null: nowhere. */
function endsOf(field: WaysField, stretch: Stretch): (Point | null)[] {
  return [endOf(field, stretch, stretch.back), endOf(field, stretch, stretch.ahead)];
}

function endOf(field: WaysField, stretch: Stretch, end: StretchEnd): Point | null {
  if (!end.isOpen) return null;
  const middle = middleOfEnd(end);
  const beyond = add(middle, scale(alongOf(stretch), Math.sign(end.offset || 1) * (BODY / 2)));
  if (fits(field, beyond)) return beyond;
  return fits(field, middle) ? middle : null;
}

/** A body stands no farther than half its width beyond the middle of an end, and looks as far round itself. */
const boxRoundEnds = ({ back, ahead }: Stretch): Box => grownBox(boundingBox([middleOfEnd(back), middleOfEnd(ahead)]), BODY);

/** Used again at each asking. */
const around: number[] = [];

function fits(field: WaysField, p: Point): boolean {
  if (!field.isFloor(p)) return false;
  around.length = 0;
  field.grid.collect({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y }, BODY / 2, around);
  for (let k = 0; k < around.length; k++)
    if (distanceToPart(field.parts[around[k] as number] as Part, p.x, p.y) < BODY / 2 - 1e-6) return false;
  return true;
}

import type { Finding, Severity } from '../../findings/finding.ts';
import { dot, type Point, sub, unit } from '../../geometry/vec.ts';
import { sayPlace } from '../../measures/wayWords.ts';
import type { Scene, SceneWall } from '../../scene/types.ts';
import { sayLength } from '../../units/sayLength.ts';
import { groupFindings } from '../groupFindings.ts';
import { FARTHEST, GRID } from './limits.ts';
import type { Held, Mend, MendMove } from './mendWays.ts';
import { sayNarrowest } from './sayNarrowest.ts';

const counts = ['nothing', 'one piece', 'two pieces', 'three pieces'];
const sayPieces = (n: number): string => counts[n] ?? `${n} pieces`;

/** What came of looking for a mend, in one or two sentences. The moves are told one by one by `sayMove`. */
export function sayMend(scene: Scene, mend: Mend): string {
  const locked = scene.bodies.filter(({ piece }) => piece?.locked).length;
  const isSearched = mend.end === 'apart' || mend.end === 'all' || mend.end === 'looks';
  if (!isSearched || locked === 0) return sayEnd(scene, mend);
  return `${sayEnd(scene, mend)} ${locked === 1 ? 'One piece is locked and stays' : `${locked} pieces are locked and stay`}.`;
}

function sayEnd(scene: Scene, mend: Mend): string {
  const { units } = scene.classroom.display;
  const say = (mm: number): string => sayLength(Math.round(mm), units);
  switch (mend.end) {
    case 'found':
      return `Move ${sayPieces(mend.moves.length)}, ${say(mend.total)} in all, and ${sayGain(scene, mend)}. ${sayBrings(scene, mend)}${sayStays(scene, mend)}`;
    case 'fine':
      return 'Every way is wide enough as it is.';
    case 'cannot-tell':
      return `How wide the ways are is not known: it takes ${mend.missing}.`;
    case 'nothing-free':
      return 'Nothing was found: every piece is locked or was asked to stay.';
    case 'fixed':
      return `Nothing was found: with all that may be moved out of the room, ${mend.held.map((held) => sayHeld(scene, held)).join('; ')}.`;
    case 'apart':
      return `Nothing was found: at least ${mend.pieces} pieces would have to move${sayWays(mend.ways)}, and more than ${mend.most} is another arrangement.`;
    case 'all':
      return `Nothing was found. Tried were up to ${sayPieces(mend.most)} at once, none turned, each moved up to ${say(FARTHEST)} or to its nearest wall: to where something touches or is as wide as asked (${say(scene.classroom.access.routeWidth)}), and to places of a ${say(GRID)} grid; the floor behind seats stays free. The ways were measured ${mend.looks} times.`;
    case 'looks':
      return `Nothing was found among the changes of less than ${say(mend.total)} in all; after measuring the ways ${mend.looks} times the search stops. A larger change of up to ${sayPieces(mend.most)} may exist.`;
  }
}

type Found = Extract<Mend, { end: 'found' }>;

/** So many places are said one by one. */
const MOST_SAID = 3;

/** What is new with it, counted as the list of checks counts: never a must, but what is less than that is named. */
function sayBrings(scene: Scene, { brings, stays }: Found): string {
  const narrow = new Set(stays.map(({ key }) => key));
  const fresh = groupFindings(brings).map(({ lead }) => lead);
  if (fresh.length === 0) return 'No new must comes with it.';
  const count = (severity: Severity): string[] => {
    const n = fresh.filter((finding) => finding.severity === severity).length;
    return n === 0 ? [] : [`${n} new ${severity}${n === 1 ? '' : 's'}`];
  };
  const named = fresh.filter(({ key }) => !narrow.has(key)).map(({ message }) => message);
  const places = fresh.filter(({ key }) => narrow.has(key));
  if (places.length > 0) named.push(`It is narrow then where nobody has to go through: ${sayPlaces(scene, places)}.`);
  const counts = [...count('should'), ...count('note')].join(' and ');
  return `No new must comes with it, but ${counts} ${fresh.length === 1 ? 'does' : 'do'}: ${named.join(' ')}`;
}

/** Places that are left narrow because nobody has to go through them. */
function sayStays(scene: Scene, { brings, stays }: Found): string {
  const fresh = new Set(brings.map(({ key }) => key));
  const places = groupFindings(stays.filter(({ key }) => !fresh.has(key))).map(({ lead }) => lead);
  return places.length === 0 ? '' : ` It stays narrow where nobody has to go through: ${sayPlaces(scene, places)}.`;
}

/** "between sink and table 5 (0.339 m), between table 2 and table 3 (0.517 m) and at 4 more places" */
function sayPlaces(scene: Scene, places: readonly Finding[]): string {
  const { units } = scene.classroom.display;
  const named = places.slice(0, MOST_SAID).map(({ subjects: [one, other], measured, message }) => {
    if (one === undefined || other === undefined || !measured) return message.replace(/\.$/, '');
    return `${sayPlace(scene, one, other)} (${sayLength(Math.round(measured.value), units)})`;
  });
  const more = places.length - named.length;
  return `${named.join(', ')}${more > 0 ? ` and at ${more} more place${more === 1 ? '' : 's'}` : ''}`;
}

function sayGain(scene: Scene, { place, stays, least }: Found): string {
  if (least !== null) return `every way is as wide as it must be, ${sayLength(least, scene.classroom.display.units)}`;
  // Said of every way it would not be true while a narrow place is left that has a way round.
  if (!place) return stays.length === 0 ? 'every way is wide enough' : 'there is a way wide enough to everything';
  const where = sayNarrowest(scene, place);
  if (place.enough === null) return `it is wide enough ${where}; no other way gets narrower`;
  const width = sayLength(Math.floor(place.enough), scene.classroom.display.units);
  return `it no longer holds anybody back ${where}: those ways are ${width} wide then, as the rest of them allows, and no other gets narrower`;
}

/** ", one for each of the ways to shelf 4, table 2 and shelf 9" */
function sayWays(ways: readonly string[]): string {
  const names = [...new Set(ways)];
  const [last] = names.slice(-1);
  if (last === undefined) return '';
  if (names.length === 1) return `, for the way to ${last} alone`;
  return `, one for each of the ways to ${names.slice(0, -1).join(', ')} and ${last}`;
}

function sayHeld(scene: Scene, { label, width, between }: Held): string {
  const [one, other] = between;
  const { units } = scene.classroom.display;
  if (width === 0 || one === undefined || other === undefined) return `no way leads to ${label}`;
  return `the way to ${label} stays ${sayLength(Math.round(width), units)} wide ${sayPlace(scene, one, other)}`;
}

/** "Table 7 with its 2 chairs: 0.30 m towards the window wall". */
export function sayMove(scene: Scene, { label, chairs, from, to }: MendMove): string {
  const { units } = scene.classroom.display;
  const name = `${label.charAt(0).toUpperCase()}${label.slice(1)}`;
  const withChairs = chairs === 0 ? '' : chairs === 1 ? ' with its chair' : ` with its ${chairs} chairs`;
  const steps = legs(sub(to, from)).map((leg) => `${sayLength(Math.round(Math.hypot(leg.x, leg.y)), units)} ${towards(scene, from, leg)}`);
  return `${name}${withChairs}: ${steps.join(' and ')}`;
}

/** Along and across the plan; a sliver of one is left out. */
function legs(by: Point): Point[] {
  const parts = [
    { x: by.x, y: 0 },
    { x: 0, y: by.y },
  ].sort((p, q) => Math.hypot(q.x, q.y) - Math.hypot(p.x, p.y));
  return parts.filter((leg) => Math.hypot(leg.x, leg.y) >= 0.5);
}

const sideWords = ['east', 'south', 'west', 'north'];

/** "towards the window wall": the wall that is met first that way; "to the west" where it is not met squarely. North is up. */
function towards(scene: Scene, from: Point, leg: Point): string {
  const direction = unit(leg);
  const side = sideWords[((Math.round(Math.atan2(direction.y, direction.x) / (Math.PI / 2)) % 4) + 4) % 4] ?? 'east';
  const wall = firstWall(scene, from, direction);
  if (!wall || dot(wall.inward, direction) > -0.9) return `to the ${side}`;
  const windows = scene.room.openings.filter(({ raw }) => raw.kind === 'window');
  const has = (kind: string): boolean => scene.room.openings.some((o) => o.wall.id === wall.id && o.raw.kind === kind);
  if (has('window') && windows.every((w) => w.wall.id === wall.id)) return 'towards the window wall';
  return `towards the ${side} wall`;
}

function firstWall(scene: Scene, from: Point, direction: Point): SceneWall | null {
  let nearest: { wall: SceneWall; far: number } | null = null;
  for (const wall of scene.room.walls) {
    const along = dot(direction, wall.inward);
    if (Math.abs(along) < 1e-9) continue;
    const far = dot(sub(wall.a, from), wall.inward) / along;
    const p = { x: from.x + direction.x * far, y: from.y + direction.y * far };
    const isOnIt = dot(sub(p, wall.a), sub(wall.b, wall.a)) >= -1e-6 && dot(sub(p, wall.b), sub(wall.a, wall.b)) >= -1e-6;
    if (isOnIt && far > 0 && (!nearest || far < nearest.far)) nearest = { wall, far };
  }
  return nearest?.wall ?? null;
}

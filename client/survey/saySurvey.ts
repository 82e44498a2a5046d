import { length as longOf, type Point, turn } from '#model/geometry/vec.ts';
import { type Misfit, MOST_WALLS, type Taped } from '#model/measures/surveyFit.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { capital } from '../text/sayList.ts';
import { isByDiagonals, isMistake, lengthOf, SPREADABLE, type Walk } from './walk.ts';

/**
 * What is usual: the room's figure is a class rule; 1 in 1000 is what is asked of plain surveys with a tape (U.S. Navy, Engineering
 * Aid training manual, NAVEDTRA 14069, "Meeting precision specifications").
 */
const USUAL = { open: 20, ratio: 1000 } as const;

export function sayUsual(units: LengthUnits): string {
  return `Usual: up to ${sayLength(USUAL.open, units)} in a room (class rule), 1 in ${USUAL.ratio} where surveyors tape (U.S. Navy training manual NAVEDTRA 14069). Beyond 1 in ${Math.round(1 / SPREADABLE)} something was taped or typed wrong.`;
}

/** "0.03 m open: 0.02 m east, 0.02 m south; 1 in 640 of the way round". `heading`: degrees that the first wall runs on the sheet. */
export function sayOpen(open: Point, perimeter: number, units: LengthUnits, heading = 0): string {
  const by = longOf(open);
  if (by < 1) return units === 'metric' ? 'It closes to the millimetre.' : 'It closes to a sixteenth of an inch.';
  const { x, y } = turn(open, heading);
  const parts = [
    ...(Math.abs(x) >= 1 ? [`${sayGap(Math.abs(x), units)} ${x > 0 ? 'east' : 'west'}`] : []),
    ...(Math.abs(y) >= 1 ? [`${sayGap(Math.abs(y), units)} ${y > 0 ? 'south' : 'north'}`] : []),
  ];
  return `${sayGap(by, units)} open: ${parts.join(', ')}; 1 in ${Math.round(perimeter / by)} of the way round.`;
}

/** Whole mm where a centimetre would say nothing. */
const sayGap = (mm: number, units: LengthUnits): string => sayLength(mm < 10 ? Math.round(mm) : mm, units);

const degrees = (value: number): string => `${Math.round(Math.abs(value) * 10) / 10}°`;

/** How the walk stands, in a sentence or two. */
export function sayWalk(walk: Walk, units: LengthUnits, heading = 0): string {
  const { walls, chain, isWhole, turns, turnsOff, isRound, open, perimeter, fit } = walk;
  if (walls.length === 0) return 'Begin at a corner and walk round with the tape, the wall on your left. Type the first wall.';
  if (walls.length > MOST_WALLS && walls.some(isByDiagonals))
    return `Diagonals are reckoned with for up to ${MOST_WALLS} walls. Type the angles instead.`;
  const blank = walls.findIndex((wall) => lengthOf(wall) === null);
  if (isRound && open) return sayOpen(open, perimeter, units, heading);
  if (walls.some(isByDiagonals) && fit) return sayLoose(walk);
  if (walls.some(isByDiagonals) && walls.length < 3) return 'A room has at least three walls.';
  if (blank >= 0 && fit)
    return fit.loose.length > 0
      ? sayLoose(walk)
      : `Wall ${blank + 1} was not taped: the others make it ${sayLength(Math.round(fit.walls[blank]?.value ?? 0), units)}.`;
  if (blank >= 0) return `Wall ${blank + 1} is not typed yet.`;
  const away = longOf(chain.at(-1) ?? { x: 0, y: 0 });
  const left = `${sayLength(Math.round(away), units)} from where it began`;
  if (!isWhole || Math.abs(turns) < 360 - walls.length)
    return `So far the walk ends ${left}, and has turned ${degrees(turns)} of 360° to the ${turns < 0 ? 'left' : 'right'}.`;
  return `The turns add up to ${degrees(turns)} to the ${turns < 0 ? 'left' : 'right'} instead of 360°, ${degrees(turnsOff)} ${
    turnsOff * Math.sign(turns) > 0 ? 'too many' : 'too few'
  }: a turn is typed wrong, or a wall is missing. It ends ${left}.`;
}

function sayLoose({ fit }: Walk): string {
  const names = (fit?.loose ?? []).map((i) => i + 1);
  if (names.length === 0) return 'The diagonals do not tell the angles yet.';
  const list = names.length === 1 ? `Corner ${names[0]}` : `Corners ${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${list} can still swing: tape a diagonal from there to a corner that stands, or say how it turns.`;
}

const nameOf = ({ what, index }: Taped): string =>
  ({ wall: `wall ${index + 1}`, turn: `the turn after wall ${index + 1}`, diagonal: `diagonal ${index + 1}` })[what];

/** "Wall 3 fits badly: typed 4.20 m, the others say 4.02 m." */
function sayMisfit({ of, typed, others, orElse }: Misfit, units: LengthUnits): string {
  const say = (value: number): string => (of.what === 'turn' ? degrees(value) : sayLength(Math.round(value), units));
  const name = nameOf(of);
  const also = orElse.length > 0 ? ` It may as well be ${orElse.map(nameOf).join(' or ')}: a diagonal would tell.` : '';
  return `${capital(name)} fits badly: typed ${say(typed)}, the others say ${say(others)}.${also}`;
}

/**
 * What is odd about a walk that has come round; null: nothing.
 * @param rows of walls, with the empty ones at the end: the next wall is asked for there
 */
export function sayTrouble(walk: Walk, units: LengthUnits, rows = walk.walls.length): string | null {
  if (walk.fit?.misfit) return `${sayMisfit(walk.fit.misfit, units)} Tape it again before spreading.`;
  if (!isMistake(walk)) return null;
  if (rows > walk.walls.length)
    return `Too much for the tape. Are there more walls? Then go on with wall ${walk.walls.length + 1}. If not, a turn or a length is typed wrong: walk through the rows once more.`;
  const suspect = walk.suspect === null ? '' : ` Wall ${walk.suspect + 1} runs that way: look at its length first.`;
  return `That is too much for the tape.${suspect} A diagonal would tell which wall it is.`;
}

/** "+0.003 m": a change of a length. */
export function sayChange(mm: number, units: LengthUnits): string {
  const rounded = Math.round(mm);
  if (rounded === 0) return 'as taped';
  return `${rounded > 0 ? '+' : '−'}${sayLength(Math.abs(rounded), units)}`;
}

/** "turns 0.3° right": a wall that spreading turns; null: by nothing that would be said. */
export function sayWallTurned(by: number | null): string | null {
  if (by === null || Math.abs(by) < 0.005) return null;
  const said = Math.abs(by) < 0.05 ? '0.05' : `${Math.round(Math.abs(by) * 10) / 10}`;
  return `turns ${Math.abs(by) < 0.05 ? 'less than ' : ''}${said}° ${by > 0 ? 'right' : 'left'}`;
}

/** What least squares make of the turn after a wall: "63.4° right", where it was typed also by how much it changes; null: nothing. */
export function sayTurn({ fit }: Walk, index: number): string | null {
  const turn = fit?.turns[index];
  if (!turn || fit.loose.length > 0) return null;
  const made = `${degrees(turn.value)} ${turn.value < 0 ? 'left' : 'right'}`;
  if (turn.change === null) return made;
  return Math.abs(turn.change) < 0.05 ? 'as typed' : `fitted ${made}, ${turn.change > 0 ? '+' : '−'}${degrees(turn.change)}`;
}

/** What was said not to fit, once more when it stands on the sheet. */
export const sayMisfits = (misfits: readonly string[]): string => (misfits.length === 0 ? '' : ` Look at: ${misfits.join(' ')}`);

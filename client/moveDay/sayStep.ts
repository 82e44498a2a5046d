import type { MovePlan, MoveStep } from '#model/analysis/moveDay/plan.ts';
import { TWO_PEOPLE } from '#model/analysis/moveDay/practice.ts';
import { placeOf } from '#model/analysis/moveDay/trayChanges.ts';
import type { Point } from '#model/geometry/vec.ts';
import { length } from '#model/geometry/vec.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { cellsOf, neatlineBounds } from '../plan/neatline.ts';
import { sayCount } from '../text/sayCount.ts';
import { capital, sayList } from '../text/sayList.ts';
import { wallName } from '../text/wallName.ts';
import type { MoveNames } from './names.ts';
import { sayGap, sayLegs, sayStraight, sayTurned } from './sayMove.ts';

/** A step in words: what to do, how far or with what, and what to mind. */
export interface StepWords {
  readonly title: string;
  readonly detail: string;
  /** Cautions, whole sentences. */
  readonly mind: readonly string[];
}

export interface Saying {
  readonly plan: MovePlan;
  readonly names: MoveNames;
  readonly units: LengthUnits;
  /** Mats that fit afterwards; null: not known yet. */
  readonly mats: number | null;
}

export function sayStep(step: MoveStep, saying: Saying): StepWords {
  return { ...words(step, saying), mind: mindOf(step, saying) };
}

function words(step: MoveStep, saying: Saying): Pick<StepWords, 'title' | 'detail'> {
  const { plan, names, units, mats } = saying;
  switch (step.does) {
    case 'empty':
      return { title: `Empty ${sayPieces(step.pieces, names)}`, detail: sayEmptied(step, plan) };
    case 'fill':
      return { title: `Fill ${sayPieces(step.pieces, names)}${isBack(step, plan) ? ' again' : ''}`, detail: sayFilled(step, plan) };
    case 'boards':
      return { title: `Set the boards of ${names.name(step.pieces[0] ?? '')}`, detail: sayBoards(step, saying) };
    case 'trays':
      return sayTrays(step, saying);
    case 'mats':
      return {
        title:
          mats === null
            ? 'Roll out the mats'
            : mats === 0
              ? 'Try whether a mat fits'
              : mats === 1
                ? 'Roll out the one mat that fits'
                : `Roll out all ${mats} mats`,
        detail: 'mark their corners for the first week',
      };
    case 'tape':
      return {
        title: 'Walk every way with the tape',
        detail: `${sayLength(plan.from.classroom.access.routeWidth, units)} or more, door to door; open each exit as wide as it goes`,
      };
    default:
      return sayMoved(step, saying);
  }
}

/** "shelves 4, 6 and 7", "table T3 and the paper cupboard" */
function sayPieces(pieces: readonly string[], names: MoveNames): string {
  const shelves = pieces.flatMap((id) => (/^shelf \d+$/.test(names.name(id)) ? (names.number(id) ?? []) : []));
  const others = pieces.map((id) => names.name(id)).filter((name) => !/^shelf \d+$/.test(name));
  const first = shelves.length === 0 ? [] : [`${shelves.length === 1 ? 'shelf' : 'shelves'} ${sayList(shelves)}`];
  return sayList([...first, ...others]);
}

/** "crates A to H" */
function sayCrates(letters: readonly string[], all: readonly string[]): string {
  const runs: string[][] = [];
  for (const letter of letters) {
    const last = runs.at(-1);
    if (last && all.indexOf(letter) === all.indexOf(last.at(-1) ?? '') + 1) last.push(letter);
    else runs.push([letter]);
  }
  const said = runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run));
  return `${letters.length === 1 ? 'crate' : 'crates'} ${sayList(said)}`;
}

function sayEmptied({ materials, crates }: MoveStep, { packed }: MovePlan): string {
  const letters = packed.crates.map(({ letter }) => letter);
  const byHand = materials.filter((id) => packed.byHand.includes(id)).length;
  const parts = [`${sayCount(materials.length, 'tray')}, in the order they go back`];
  if (crates.length > 0) parts.push(sayCrates(crates, letters));
  if (byHand > 0) parts.push(`${byHand} too large for a crate`);
  return parts.join(', ');
}

function sayFilled({ materials, crates }: MoveStep, { packed, from }: MovePlan): string {
  const letters = packed.crates.map(({ letter }) => letter);
  const fromTable = materials.filter((id) => !from.stands.has(id)).length;
  const byHand = materials.filter((id) => packed.byHand.includes(id)).length;
  const parts = crates.length > 0 ? [sayCrates(crates, letters)] : [];
  if (byHand > 0) parts.push(`${byHand} that went by hand`);
  if (fromTable > 0) parts.push(`${fromTable} from the table`);
  return parts.join('; ');
}

/** Something stood on one of these before. */
const isBack = ({ pieces }: MoveStep, { from }: MovePlan): boolean =>
  [...from.stands.values()].some(({ placement }) => placement.piece !== null && pieces.includes(placement.piece));

function sayBoards({ pieces }: MoveStep, { plan, units }: Saying): string {
  const after = plan.changes.find(({ id }) => id === pieces[0])?.after;
  const heights = (after?.levels ?? []).map(({ surface }) => surface).sort((p, q) => q - p);
  return heights.length === 0 ? 'none stays' : `at ${sayList(heights.map((mm) => sayLength(mm, units)))}`;
}

function sayTrays({ pieces, materials }: MoveStep, { plan, names }: Saying): Pick<StepWords, 'title' | 'detail'> {
  const { trays, from, to } = plan;
  const changes = trays.filter(({ material }) => materials.includes(material));
  const surface = (scene: typeof from, id: string): number => scene.stands.get(id)?.board?.surface ?? Infinity;
  const shelf = names.name(pieces[0] ?? '');
  const count = sayCount(materials.length, 'tray');
  const nameOf = (id: string): string => from.materialById.get(id)?.name ?? id;
  const detail =
    materials.length <= 2
      ? sayList(materials.map(nameOf))
      : `${materials.slice(0, 2).map(nameOf).join(', ')} and ${materials.length - 2} more`;
  const isAll = (test: (change: (typeof changes)[number]) => boolean): boolean => changes.every(test);
  if (isAll(({ kind }) => kind === 'to-table')) return { title: `Put ${count} of ${shelf} on the table`, detail };
  if (isAll(({ kind }) => kind === 'from-table')) return { title: `Put ${count} on ${shelf}`, detail: `from the table: ${detail}` };
  if (isAll(({ kind }) => kind === 'order')) return { title: `Put ${count} in another order on ${shelf}`, detail };
  if (isAll(({ kind, material }) => kind === 'board' && surface(to, material) < surface(from, material)))
    return { title: `Bring ${count} on ${shelf} down`, detail };
  if (isAll(({ kind, material }) => kind === 'board' && surface(to, material) > surface(from, material)))
    return { title: `Bring ${count} on ${shelf} up`, detail };
  return { title: `Change ${count} on ${shelf}`, detail };
}

function sayMoved(step: MoveStep, saying: Saying): Pick<StepWords, 'title' | 'detail'> {
  const { plan, names, units } = saying;
  const [id = '', ...others] = step.pieces;
  const change = plan.changes.find((one) => one.id === id);
  const isTable = (change?.before ?? change?.after)?.kind === 'table';
  const withChairs = isTable && others.length > 0 ? ` with its ${others.length === 1 ? 'chair' : `${others.length} chairs`}` : '';
  const what = isTable || others.length === 0 ? `${names.name(id)}${withChairs}` : `${step.pieces.length} chairs`;
  const isRug = (change?.before ?? change?.after)?.kind === 'rug';
  const where = sayWhere(step, saying);
  const people = step.people === 2 ? 'two people: ' : '';
  if (step.does === 'out') return { title: `Put ${what} away`, detail: `${people}to where it is kept, not before an exit` };
  if (step.does === 'in') return { title: `Bring in ${what}`, detail: `${people}${where}` };
  if (step.does === 'aside') {
    if (isRug) return { title: `Roll up ${what}`, detail: 'it comes back when the floor is free' };
    if (!step.stands)
      return {
        title: `Set ${what} aside`,
        detail: `${people}no floor in the room is free for it: it waits outside the room, off every way out`,
      };
    return {
      title: `Set ${what} aside`,
      detail: `${people}to ${cellsOf(step.stands.footprint, neatlineBounds(plan.from.room.outline))}, out of the way for a while`,
    };
  }
  if (change?.isExchanged && change.after) {
    const { width, depth, height } = change.after;
    const tall = height !== null && height !== change.before?.height ? `, ${sayLength(height, units)} high` : '';
    return {
      title: `Exchange ${what}`,
      detail: `${people}for one of ${sayLength(width, units)} by ${sayLength(depth, units)}${tall}; ${where}`,
    };
  }
  const { path } = step;
  const turned = sayTurned(change?.turned ?? 0);
  if (isRug) return { title: `${step.does === 'back' ? 'Lay' : 'Move'} ${what}`, detail: where };
  if (path?.how === 'slide') {
    const back = step.does === 'back' ? ' to its place' : '';
    const way =
      path.legs.length === 1 ? sayStraight(path.legs[0] as Point, units) : path.legs.map((leg) => sayStraight(leg, units)).join(', then ');
    return { title: `Slide ${what} ${way}${back}`, detail: `${people}${where}` };
  }
  if (path?.how === 'turn')
    return { title: `Turn ${what} where it stands`, detail: `${people}${[turned, where].filter(Boolean).join('; ')}` };
  const far = path?.how === 'carry' && length(path.by) >= 0.5 ? `${sayLegs(path.by, units)}` : '';
  const said = [far, turned, where].filter(Boolean).join('; ');
  return { title: `Carry ${what} to its place`, detail: `${people}${said}` };
}

/** "to 0.10 m from the north wall", "against the north wall", "0.05 m clear of shelf 4" */
function sayWhere({ by, stands, path }: MoveStep, { plan, names, units }: Saying): string {
  if (!stands) return '';
  const cells = cellsOf(stands.footprint, neatlineBounds(plan.from.room.outline));
  if (!by) return `to ${cells}`;
  if (by.kind === 'piece') {
    const other = plan.to.bodyById.get(by.id)?.piece
      ? names.name(plan.earlierId(by.id))
      : (plan.to.bodyById.get(by.id)?.label ?? 'the next thing');
    return by.gap < 10 ? `${path?.how === 'slide' ? 'up ' : ''}against ${other}` : `${sayGap(by.gap, units)} clear of ${other}`;
  }
  const { walls } = plan.from.room;
  const wall = walls.find(({ id }) => id === by.id);
  const name = wall ? `the ${wallName(walls, wall)}` : 'the wall';
  return by.gap < 10
    ? `${path?.how === 'slide' ? 'up ' : ''}against ${name}, ${cells}`
    : `${path?.how === 'slide' ? 'to ' : ''}${sayGap(by.gap, units)} from ${name}, ${cells}`;
}

export const sayTwoPeople = (units: LengthUnits): string =>
  `Two people lift it: ${sayLength(TWO_PEOPLE.long, units)} long or ${sayLength(TWO_PEOPLE.high, units)} high and more is not moved alone (common practice, no source).`;

/** What can hurt somebody, in a few words; the rest stands with the step once it is opened. "": nothing. */
export function sayCaution({ unfasten, fasten }: MoveStep): string {
  const words: string[] = [];
  if (unfasten === 'yes') words.push('unfasten it first, and hold it: it can tip');
  if (unfasten === 'look') words.push('look first whether it is fastened to the wall');
  if (fasten === 'yes') words.push('fasten it there before anything is put on it');
  if (fasten === 'look') words.push('settle whether it is fastened there');
  return capital(words.join('; '));
}

function mindOf(step: MoveStep, { plan, names, units }: Saying): string[] {
  const mind: string[] = [];
  if (step.unfasten === 'yes') mind.push('Unfasten it from the wall first; from then on it can tip: one of you holds it.');
  if (step.unfasten === 'look') mind.push('Look first whether it is fastened to the wall: that is not known.');
  if (step.isLarge) mind.push(sayTwoPeople(units));
  if (step.fasten === 'yes') mind.push('Fasten it to the wall again before anything is put on it: until then it can tip.');
  if (step.fasten === 'loose')
    mind.push('It is not fastened to the wall there. Low shelves tip too: see the check whether it is safe as it stands.');
  if (step.fasten === 'look')
    mind.push(
      'Whether it is to be fastened to the wall there is not known: settle that before anything is put on it. Low shelves tip too.',
    );
  if (step.overlaps.length > 0)
    mind.push(
      `In this arrangement it stands in the same place as ${sayList(step.overlaps.map((id) => nameOfAny(id, plan, names)))}: no order helps. Move one of them on the Room sheet.`,
    );
  return mind;
}

export function nameOfAny(id: string, plan: MovePlan, names: MoveNames): string {
  const body = plan.from.bodyById.get(id) ?? plan.to.bodyById.get(id);
  return body?.piece ? names.name(plan.earlierId(id)) : (body?.label ?? 'a thing that is gone');
}

/** Where a tray of a crate goes back: "top and middle" of these places' boards, top first. */
export function sayBoardsOf(plan: MovePlan, materials: readonly string[], boardName: (index: number, count: number) => string): string {
  const named = new Map<number, string>();
  for (const id of materials) {
    const tray = plan.to.stands.get(id);
    const place = placeOf(tray, plan.earlierId);
    const side = tray?.board && plan.to.sides.find(({ boards }) => tray.board && boards.includes(tray.board));
    if (!place || !side || !tray?.board) continue;
    const index = side.boards.indexOf(tray.board);
    named.set(index, boardName(index, side.boards.length).toLowerCase());
  }
  return sayList([...named].sort(([p], [q]) => p - q).map(([, name]) => name));
}

export const sayWaits = (numbers: readonly number[]): string => `after ${sayList(numbers.map(String))}`;

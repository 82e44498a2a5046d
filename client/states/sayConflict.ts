import type { Version } from '#model/document/version.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { cellAt, neatlineBounds } from '../plan/neatline.ts';
import { type Conflict, isWhole } from '../session/conflicts.ts';
import type { Session } from '../session/types.ts';
import { isLengthField, nameOfPath, wordOfField } from './nameOfPath.ts';

export interface ConflictWords {
  readonly title: string;
  readonly mine: string;
  readonly theirs: string;
}

/** "RT", or what stands for somebody who is not known. */
export const sayWho = ({ by }: Pick<Conflict, 'by'>): string => (by === '' || by === 'somebody' ? 'somebody else' : by);

/** Both versions in words. */
export function sayConflict(session: Session, conflict: Conflict): ConflictWords {
  const who = sayWho(conflict);
  const entry = wholeOf(conflict);
  const name = nameOfPath(session, entry ? [...conflict.path, entry.key] : conflict.path);
  if (entry && entry.theirs === null)
    return { title: `${name}: changed here, taken away meanwhile`, mine: 'as you had it', theirs: 'taken away' };
  const title = `${name}: changed here and by ${who}, neither had seen the other`;
  const all = entry ? fieldsOf(entry.mine, entry.theirs) : Object.entries(conflict.fields);
  const keys = all.filter(([key]) => !key.startsWith('~') || key.startsWith('~~'));
  const say = (side: 'mine' | 'theirs'): string => sayAll(session, conflict, new Map(keys.map(([key, field]) => [key, field[side]])));
  return { title, mine: say('mine'), theirs: say('theirs') };
}

/** The one whole thing that a conflict is about; null: it is about fields. */
function wholeOf({ fields }: Conflict) {
  const [first] = Object.entries(fields);
  return first && isWhole(first[1]) ? { key: first[0], ...first[1] } : null;
}

function fieldsOf(mine: Version, theirs: Version | null): [string, { mine: Version | null; theirs: Version | null }][] {
  const here = 'map' in mine ? mine.map : {};
  const there = theirs && 'map' in theirs ? theirs.map : {};
  return [...new Set([...Object.keys(here), ...Object.keys(there)])]
    .filter((key) => JSON.stringify(here[key]) !== JSON.stringify(there[key]))
    .map((key) => [key, { mine: here[key] ?? null, theirs: there[key] ?? null }]);
}

function sayAll(session: Session, { path }: Conflict, fields: ReadonlyMap<string, Version | null>): string {
  const isTray = path.includes('placements');
  const place = isTray ? sayTrayPlace(session, path, fields) : sayPlace(session, path, fields);
  const told = new Set(isTray ? ['piece', 'level', 'side', 'x', 'y'] : ['x', 'y']);
  const rest = [...fields]
    .filter(([key]) => !(place !== '' && told.has(key)))
    .map(([key, version]) => `${wordOfField(key)} ${sayValue(session, key, version)}`);
  return [place, ...rest].filter((part) => part !== '').join('; ');
}

const plain = (version: Version | null | undefined): unknown => (version && 'value' in version ? version.value : undefined);

/** "at C4 (2.30 m across, 1.10 m down)" */
function sayPlace(session: Session, path: readonly string[], fields: ReadonlyMap<string, Version | null>): string {
  const stands = standing(session, path);
  const [x, y] = [plain(fields.get('x')) ?? stands?.x, plain(fields.get('y')) ?? stands?.y];
  if (!(fields.has('x') || fields.has('y')) || typeof x !== 'number' || typeof y !== 'number') return '';
  const { room, display } = session.classroom();
  const cell = cellAt({ x, y }, neatlineBounds(room.corners));
  const figures = `${sayLength(Math.round(x), display.units)} across, ${sayLength(Math.round(y), display.units)} down`;
  return cell === '' ? figures : `at ${cell} (${figures})`;
}

/** What stands at the path now, for the half of a place that did not differ. */
function standing(session: Session, [root, id, list, of]: readonly string[]): { readonly x: number; readonly y: number } | undefined {
  const { room, arrangements } = session.classroom();
  if (root === 'arrangements' && list === 'pieces')
    return arrangements.find((one) => one.id === id)?.pieces.find((piece) => piece.id === of);
  if (root === 'fixtures') return room.fixtures.find((one) => one.id === id);
  return root === 'corners' ? room.corners.find((one) => one.id === id) : undefined;
}

function sayTrayPlace(session: Session, path: readonly string[], fields: ReadonlyMap<string, Version | null>): string {
  const arrangement = session.classroom().arrangements.find(({ id }) => id === path[1]);
  const now = arrangement?.placements.find(({ material }) => material === path[3]);
  const of = (key: 'piece' | 'level' | 'x'): unknown => (fields.has(key) ? plain(fields.get(key)) : now?.[key]);
  const [piece, level, x] = [of('piece'), of('level'), of('x')];
  if (typeof piece !== 'string') return 'on the floor of the room';
  const shelf = nameOfPath(session, ['arrangements', path[1] ?? '', 'pieces', piece]).replace(/^./, (first) => first.toLowerCase());
  const boards = [...(arrangement?.pieces.find(({ id }) => id === piece)?.levels ?? [])].sort((p, q) => q.surface - p.surface);
  const board = boards.findIndex(({ id }) => id === level);
  const { units } = session.classroom().display;
  const from = typeof x === 'number' ? `, ${sayLength(Math.round(x), units)} from its left end` : '';
  return `on ${shelf}${board === -1 ? '' : `, board ${board + 1} from the top`}${from}`;
}

function sayValue(session: Session, key: string, version: Version | null): string {
  if (version && 'map' in version) return 'changed';
  const value = plain(version);
  if (value === undefined || value === null) return 'not given';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    if (isLengthField(key)) return sayLength(value, session.classroom().display.units);
    return key === 'rotation' ? `${value} degrees` : String(value);
  }
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return `“${text.length > 60 ? `${text.slice(0, 59)}…` : text}”`;
}

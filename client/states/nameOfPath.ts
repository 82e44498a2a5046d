import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { nameOfItem, nameOfPiece } from '../plan/describe.ts';
import type { Session } from '../session/types.ts';

const roots: Readonly<Record<string, string>> = {
  classroom: 'The class',
  moveDay: 'The move day',
  notes: 'A remark',
  left: 'A finding left as it is',
  zones: 'An area of the floor',
  surveyWalls: 'A wall as it was taped',
  surveyDiagonals: 'A diagonal as it was taped',
  materials: 'A material',
  openings: 'A door or window',
  fixtures: 'A fixture',
  corners: 'The corners of the room',
  arrangements: 'The arrangements',
};

/** How the sheet calls what lies at a path of the document: "Shelf 7", "A board of shelf 7", "The tray Rods". */
export function nameOfPath(session: Session, path: readonly string[]): string {
  const [root = '', id, list, of, inner] = path;
  const classroom = session.classroom();
  if (root === 'arrangements' && id !== undefined) {
    const arrangement = classroom.arrangements.find((one) => one.id === id);
    const called = `“${arrangement?.name || 'the arrangement without a name'}”`;
    const where = classroom.arrangements.length > 1 ? `, in ${called}` : '';
    if (list === undefined || of === undefined) return `The arrangement ${called}`;
    if (list === 'placements') return `The tray ${materialName(session, of)}${where}`;
    if (list !== 'pieces') return `${list === 'watch' ? 'A place to watch from' : 'The way round the shelves'}${where}`;
    const piece = arrangement?.pieces.find((one) => one.id === of);
    const name = piece ? nameOfPiece(piece, pieceNumbers(classroom)) : 'A piece of furniture';
    return `${inner === 'levels' ? `A board of ${lowerFirst(name)}` : name}${where}`;
  }
  if (id !== undefined) {
    if (root === 'materials') return `The material ${materialName(session, id)}`;
    if (root === 'openings' && classroom.room.openings.some((one) => one.id === id)) return nameOfItem(session, { kind: 'opening', id });
    if (root === 'fixtures' && classroom.room.fixtures.some((one) => one.id === id)) return nameOfItem(session, { kind: 'fixture', id });
    if (root === 'corners' && classroom.room.corners.some((one) => one.id === id)) return nameOfItem(session, { kind: 'corner', id });
    if (root === 'corners') return 'A corner of the room';
  }
  return roots[root] ?? 'The classroom';
}

const materialName = (session: Session, id: string): string =>
  session.classroom().materials.find((one) => one.id === id)?.name || 'without a name';
const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

const fieldWords: Readonly<Record<string, string>> = {
  x: 'place, across',
  y: 'place, down',
  rotation: 'turned by',
  width: 'length',
  depth: 'depth',
  height: 'height',
  surface: 'height above the floor',
  clear: 'clear height',
  setBack: 'set back',
  offset: 'from the corner',
  sill: 'sill',
  head: 'head',
  locked: 'locked',
  anchored: 'fastened to the wall',
  sides: 'open sides',
  name: 'name',
  text: 'words',
  by: 'who',
  done: 'done',
  kind: 'kind',
  leaves: 'leaves',
  swing: 'swing',
  exit: 'exit',
  state: 'where it is',
  step: 'step',
  strand: 'strand',
  area: 'area',
  after: 'what comes before it',
  kg: 'mass in kg',
  stands: 'how it stands',
  current: 'the arrangement that stands now',
  adults: 'adults',
  ruleSet: 'rules',
  units: 'units',
  fromMonths: 'from (months)',
  toMonths: 'to (months)',
  count: 'how many',
};

/** A field in words; one without words by the name it has in the file. */
export const wordOfField = (key: string): string =>
  fieldWords[key] ?? `“${key.replace(/^~~/, '~').replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)}”`;

const lengths = new Set([
  'x',
  'y',
  'width',
  'depth',
  'height',
  'surface',
  'clear',
  'setBack',
  'offset',
  'sill',
  'head',
  'toeRecess',
  'panel',
  'length',
]);
/** Fields that are a length in mm. */
export const isLengthField = (key: string): boolean => lengths.has(key);

import type { Report } from '#model/analysis/report.ts';
import { type AreaCode, areaCode, areaLetters } from '#model/catalogue/areas.ts';
import type { Severity } from '#model/findings/finding.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Piece } from '#model/schema/types.ts';
import { checkOf, holdsOf, NOT_KNOWN, saySize } from '../lists/shelfRows.ts';
import { areasOfShelves } from '../plan/areas.ts';
import { nameOfPiece } from '../plan/describe.ts';
import { piecesInOrder } from '../plan/items.ts';
import { areaNames } from '../ui/areas.ts';
import type { FlowRow } from './flow.ts';
import { hatchOf } from './hatchLines.ts';
import { line, type Mark, rect, shape, weights, words } from './marks.ts';
import type { PrintInput } from './pageTypes.ts';
import type { PrintChoice } from './printChoice.ts';
import { openRemarks } from './remarkMarks.ts';
import { isMarked, severityMark, unknownMark } from './severityMark.ts';
import { type Sign, signRows } from './signRows.ts';
import { type Column, headRow, spaceRow, tableRows } from './table.ts';
import { unseenOnPaper } from './unseenMarks.ts';

/** mm: from here on the list says what the checks say too */
const WITH_CHECKS = 88;

/** The list beside the plan: shelves first, then tables and the rest, and what the letters and lines mean. `size`: mm of its letters. */
export function shelfListRows(
  { scene, report, measure, choice }: Pick<PrintInput, 'scene' | 'report' | 'measure' | 'choice'>,
  width: number,
  size: number,
): FlowRow[] {
  const { arrangement, classroom } = scene;
  const { units } = classroom.display;
  const numbers = pieceNumbers(classroom);
  const areas = areasOfShelves(arrangement, classroom.materials);
  const pieces = piecesInOrder(arrangement, classroom);
  const shelves = pieces.filter(({ kind }) => kind === 'shelf');
  const others = pieces.filter(({ kind }) => kind !== 'shelf');
  const standing = (piece: Piece): string[] => arrangement.placements.filter((p) => p.piece === piece.id).map((p) => p.material);
  const checkSaid = (piece: Piece): string => checkOf(report, { kind: 'piece', id: piece.id }, standing(piece)).check;
  const isUnknown = (piece: Piece | undefined): boolean => piece !== undefined && checkSaid(piece) === NOT_KNOWN;
  const hasChecks = width >= WITH_CHECKS && report !== null;
  const [no, badge, long, trays, checks] = [7, 10, units === 'imperial' ? 29 : 22, 9, hasChecks ? 21 : 0];
  const columns: Column[] = [
    { title: 'No', width: no },
    { title: 'Area', width: badge, draw: (row, x, y) => badgeOf(areas.get(shelves[row]?.id ?? ''), x, y) },
    { title: 'Holds', width: width - no - badge - long - trays - checks },
    { title: 'Long × high', width: long, align: 'end' },
    { title: 'Trays', width: trays, align: 'end' },
    ...(hasChecks
      ? [
          {
            title: '  Checks',
            width: checks,
            draw: (row: number, x: number, y: number) => (isUnknown(shelves[row]) ? [unknownMark(x + 1.2, y, size)] : []),
          },
        ]
      : []),
  ];
  const shelfCells = shelves.map((piece) => [
    numbers.get(piece.id) ?? '',
    '',
    holdsOf(piece),
    saySize(piece, units),
    String(standing(piece).length),
    // The dashed ring stands before it.
    isUnknown(piece) ? `${'\u00a0'.repeat(4)}${NOT_KNOWN}` : checkSaid(piece),
  ]);

  const other: Column[] = [
    { title: 'Other things', width: width - long - trays },
    { title: 'Long × high', width: long, align: 'end' },
    { title: 'Seats', width: trays, align: 'end' },
  ];
  const otherCells = others.map((piece) => [
    [nameOfPiece(piece, numbers), holdsOf(piece)].filter((part, i, all) => part !== '' && all.indexOf(part) === i).join(', '),
    saySize(piece, units),
    seatsOf(piece),
  ]);
  const look = { measure, size };
  return [
    headRow('Shelf list', width),
    ...tableRows({ ...look, columns }, shelfCells),
    ...(others.length > 0 ? [spaceRow(2.5), ...tableRows({ ...look, columns: other }, otherCells)] : []),
    spaceRow(2.5),
    ...legendRows({ scene, report, choice }, width),
  ];
}

function seatsOf({ kind, seatSides }: Piece): string {
  const count = Object.values(seatSides).reduce((sum, seats) => sum + (seats ?? 0), 0);
  return kind === 'table' ? String(count) : '';
}

/** Two letters on the hatch of the area, centred at a height. */
function badgeOf(area: { readonly area: string; readonly strand: string } | undefined, x: number, y: number): Mark[] {
  if (!area) return [];
  return badge(areaCode(area.area, area.strand), areaLetters(area.area, area.strand), x, y);
}

function badge(code: AreaCode | null, letters: string, x: number, y: number): Mark[] {
  const [wide, high] = [8, 3.4];
  const [x0, y0] = [x, y - high / 2];
  const ring = [
    { x: x0, y: y0 },
    { x: x0 + wide, y: y0 },
    { x: x0 + wide, y: y0 + high },
    { x: x0, y: y0 + high },
  ];
  return [
    ...(code ? hatchOf(ring, code, 0.9) : []),
    rect(x0 + 1.9, y0 + 0.3, wide - 3.8, high - 0.6, { weight: 0, fill: 'white' }),
    rect(x0, y0, wide, high, { weight: weights.dimension }),
    words(letters, x0 + wide / 2, y, { size: 2.3, weight: 700, align: 'middle' }),
  ];
}

/** What letters, hatches and lines mean, in two columns where there is room. */
export function legendRows({ scene, report, choice }: Pick<PrintInput, 'scene' | 'report' | 'choice'>, width: number): FlowRow[] {
  const areas = areasOfShelves(scene.arrangement, scene.classroom.materials);
  const codes = [...new Set([...areas.values()].flatMap(({ area, strand }) => areaCode(area, strand) ?? []))];
  const entries: Sign[] = [
    ...codes.map((code) => ({ text: areaNames[code], draw: (x: number, y: number) => badge(code, code, x, y) })),
    { text: 'open side; a tick a board', draw: openSideSign },
    { text: 'a mat that fits', draw: matSign },
    ...severitiesOnPlan(report, choice).map((severity) => ({
      text: `a check: ${severity}`,
      draw: (x: number, y: number) => severityMark(severity, x + 4, y, 3),
    })),
    ...(choice.hasUnseen && unseenOnPaper(scene, report).length > 0 ? [{ text: 'floor that no adult sees', draw: unseenSign }] : []),
    ...(choice.hasRemarks && openRemarks(scene).length > 0 ? [{ text: 'a remark, in the list', draw: remarkSign }] : []),
  ];
  return signRows(entries, width);
}

function severitiesOnPlan(report: Report | null, { hasMarks }: PrintChoice): Severity[] {
  if (!report || !hasMarks) return [];
  const marked = new Set(report.findings.filter(isMarked).map(({ severity }) => severity));
  return (['must', 'should'] as const).filter((severity) => marked.has(severity));
}

function openSideSign(x: number, y: number): Mark[] {
  const tick = (at: number): Mark =>
    line([
      { x: x + at, y: y + 0.4 },
      { x: x + at, y: y + 1.7 },
    ]);
  return [
    line(
      [
        { x, y: y + 0.3 },
        { x: x + 8, y: y + 0.3 },
      ],
      { weight: weights.openSide },
    ),
    tick(0.8),
    tick(1.65),
    tick(2.5),
  ];
}

function unseenSign(x: number, y: number): Mark[] {
  const [x0, y0, wide, high] = [x, y - 1.7, 8, 3.4];
  const ring = [
    { x: x0, y: y0 },
    { x: x0 + wide, y: y0 },
    { x: x0 + wide, y: y0 + high },
    { x: x0, y: y0 + high },
  ];
  return [...hatchOf(ring, 'unseen', 2), shape(ring, { weight: weights.dimension, dash: [0.6, 0.9] })];
}

const remarkSign = (x: number, y: number): Mark[] => [
  rect(x + 2, y - 1.7, 3.4, 3.4),
  words('1', x + 3.7, y, { size: 2.2, weight: 650, align: 'middle', isItalic: true }),
];

const matSign = (x: number, y: number): Mark[] => [rect(x + 1, y - 1.5, 5, 3, { weight: weights.dimension, dash: [1.1, 0.7] })];

import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { contentOf, contentStrokes } from '../front/drawings.ts';
import { BOARD_MM, NAME_LINE, NAME_SIZE, RIM_MM } from '../front/drawnSizes.ts';
import { type FrontBoard, type FrontLayout, type FrontTray, frontLayout } from '../front/frontLayout.ts';
import { type FrontLine, frontLines, type LineKind } from '../front/frontLines.ts';
import type { FrontView } from '../front/frontView.ts';
import { lineHeights } from '../front/lineHeights.ts';
import { nameLabels } from '../front/nameLabels.ts';
import { linesBelow, nameTop, standingOn } from '../front/nameRoom.ts';
import { orderMoves } from '../front/orderMoves.ts';
import { sayReading } from '../front/readingOrder.ts';
import { sideName, sideWord } from '../front/shelfNames.ts';
import { spreadLabels } from '../front/spreadLabels.ts';
import { figure } from '../text/figure.ts';
import { capital } from '../text/sayList.ts';
import { line, type Mark, type Measure, rect, round, shifted, strokes, weights, words } from './marks.ts';
import type { PrintInput } from './pageTypes.ts';
import { severityMark } from './severityMark.ts';
import { cutText } from './wrapText.ts';

export interface FrontOnPaper {
  /** From (0, 0), mm: heading and drawing. */
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  readonly layout: FrontLayout;
}

type Input = Pick<PrintInput, 'scene' | 'report' | 'measure'>;

/** mm on paper */
const HEAD = 10.5;
const TITLE = 4.2;
/** a title longer than this is cut */
const MOST_TITLE = 150;
const STAFF = { wide: 2, letters: 7.5, toShelf: 13 } as const;
/** below the floor: names of a low board, then the reading arrow */
const BELOW = { names: 9, arrow: 3.5 } as const;
const NAME = 2.2;
/** The screen's drawing rules are in px: so many are a mm of paper. */
const PX = NAME_SIZE / NAME;

const dashes: Readonly<Record<LineKind, readonly number[]>> = {
  take: [],
  high: [3, 1],
  eye: [3, 0.8, 0.5, 0.8],
  see: [0.6, 0.8],
  low: [3, 1],
};

/** One shelf side true to scale, with staff, boards, trays and the lines of the smallest child. */
export function frontOnPaper({ scene, report, measure }: Input, side: SceneSide, scale: number): FrontOnPaper {
  const { units, readingDirection } = scene.classroom.display;
  const layout = frontLayout(side, trayGapOf(scene.classroom));
  const heights = lineHeights(scene, side, layout);
  const lines = heights ? frontLines(heights, units) : [];
  const isMirrored = readingDirection === 'rtl';
  const step = staffStep(units);
  const top = Math.ceil((Math.max(layout.top, ...lines.map(({ z }) => z)) + 20) / step) * step;
  const labels = lines.map((each) => `${each.name} ${each.text}`);
  const labelsWide = Math.max(0, ...labels.map((text) => measure(text, 2.3))) + 5;
  const before = STAFF.wide + STAFF.toShelf + STAFF.letters;
  const wide = layout.width / scale;
  const head = sayHead(side, capital(sideName(scene, side)), scale, units, readingDirection);
  const titleWide = Math.min(MOST_TITLE, measure(head.title, TITLE, 650, true));
  const width = Math.max(before + wide + labelsWide, measure(head.what, 2.3), titleWide) + 0.5;
  const floor = HEAD + top / scale;
  const left = isMirrored ? labelsWide : before;
  const draw: Drawing = {
    layout,
    units,
    isMirrored,
    measure,
    scale,
    toX: (mm) => left + mm / scale,
    toY: (mm) => floor - mm / scale,
  };
  const moves = orderMoves(report, scene);
  const marks = [
    ...headMarks(head, width, measure),
    ...staffMarks(draw, top),
    ...carcass(draw),
    ...lineMarks(draw, lines, HEAD, floor),
    ...layout.boards.flatMap((board) => freeMarks(board, draw)),
    ...layout.boards.flatMap((board) => trayMarks(draw, board, (id) => moves.has(id))),
    ...nameMarks(draw),
    ...boardHeights(draw),
  ];
  return { marks, width, height: floor + BELOW.names + BELOW.arrow, layout };
}

interface Drawing {
  readonly layout: FrontLayout;
  readonly units: LengthUnits;
  readonly isMirrored: boolean;
  readonly measure: Measure;
  readonly scale: number;
  /** mm of paper from mm of the shelf and above the floor */
  readonly toX: (mm: number) => number;
  readonly toY: (mm: number) => number;
}

/** What stands above a front: its name, then scale, size and how it is read. */
function sayHead(
  side: SceneSide,
  title: string,
  scale: number,
  units: LengthUnits,
  direction: 'ltr' | 'rtl',
): { title: string; what: string } {
  const { piece } = side;
  const name = piece.name.replace(/^\s*shelf\s*\d*\s*/i, '');
  const deep = side.side === 'left' || side.side === 'right' ? piece.width : piece.depth;
  const high = piece.height === null ? 'height not known' : `${sayLength(piece.height, units)} high`;
  const read = sayReading(piece, direction);
  return {
    title: [piece.sides.length > 1 ? title : `${title}, ${sideWord(side.side)}`, name].filter(Boolean).join(' · '),
    what: `1:${scale} · ${figure(side.width, units)} × ${figure(deep, units)}, ${high}${read && ` · ${read}`}`,
  };
}

const headMarks = ({ title, what }: { title: string; what: string }, width: number, measure: Measure): Mark[] => [
  words(cutText(title, width, measure, TITLE, 650, true), 0, 2.8, { size: TITLE, weight: 650, isTitle: true }),
  words(what, 0, 7.2, { size: 2.3 }),
];

/** mm of one bar of the staff */
const staffStep = (units: LengthUnits): number => (units === 'imperial' ? 76.2 : 100);

/** A levelling staff in 0.1 m, or in quarters of a foot, lettered at every second one or at the feet. */
function staffMarks({ toX, toY, scale, layout, isMirrored, units }: Drawing, top: number): Mark[] {
  const step = staffStep(units);
  const each = step / scale;
  const every = units === 'imperial' ? 4 : each > 3 ? 1 : 2;
  const x = isMirrored ? toX(layout.width) + STAFF.toShelf : toX(0) - STAFF.toShelf - STAFF.wide;
  const letters = isMirrored ? { x: x + STAFF.wide + 1, align: 'start' as const } : { x: x - 1, align: 'end' as const };
  return Array.from({ length: Math.round(top / step) }, (_, i) => {
    const said = units === 'imperial' ? `${i / 4}'` : (i / 10).toFixed(1);
    return [
      rect(x, toY((i + 1) * step), STAFF.wide, each, { weight: weights.dimension, fill: i % 2 === 0 ? 'black' : 'white' }),
      ...(i > 0 && i % every === 0 ? [words(said, letters.x, toY(i * step), { size: 2.1, align: letters.align })] : []),
    ];
  }).flat();
}

function carcass({ layout, toX, toY, scale, isMirrored }: Drawing): Mark[] {
  const [left, right, floor] = [toX(0), toX(layout.width), toY(0)];
  const panel = layout.panel / scale;
  const high = layout.height / scale;
  const isTopBoard = layout.boards.some(({ level, surface }) => level !== null && surface >= layout.height - 150);
  const from = left - STAFF.toShelf + 2;
  const to = right + STAFF.toShelf - 2;
  const ticks = Array.from({ length: Math.floor((to - from) / 2.2) }, (_, i) => {
    const x = from + 1.6 + i * 2.2;
    return [
      { x, y: floor },
      { x: x - 1.4, y: floor + 1.4 },
    ] as const;
  });
  const arrow = floor + BELOW.names + 1.5;
  const [tail, tip] = isMirrored ? [right, left] : [left, right];
  const back = isMirrored ? 1.6 : -1.6;
  return [
    rect(left, toY(layout.height), right - left, high, { fill: 'white' }),
    rect(left, toY(layout.height), panel, high),
    rect(right - panel, toY(layout.height), panel, high),
    ...(isTopBoard || layout.piece.height === null
      ? []
      : [rect(left, toY(layout.height), right - left, BOARD_MM / scale, { fill: 'white' })]),
    ...layout.boards.flatMap(({ level, left: at, width, surface }) =>
      level === null ? [] : [rect(toX(at), toY(surface), width / scale, BOARD_MM / scale, { fill: 'white' })],
    ),
    line(
      [
        { x: from, y: floor },
        { x: to, y: floor },
      ],
      { weight: weights.openSide },
    ),
    strokes(ticks, weights.hatch),
    line(
      [
        { x: tail, y: arrow },
        { x: tip, y: arrow },
      ],
      { weight: weights.dimension },
    ),
    line(
      [
        { x: tip + back, y: arrow - 0.8 },
        { x: tip, y: arrow },
        { x: tip + back, y: arrow + 0.8 },
      ],
      { weight: weights.dimension },
    ),
  ];
}

function freeMarks(board: FrontBoard, { toX, toY, scale, units, measure }: Drawing): Mark[] {
  return board.free.flatMap(({ x, width }) => {
    const text = `${figure(width, units)} free`;
    const wide = width / scale - 1.4;
    if (measure(text, 2) > wide) return [];
    const [at, y] = [toX(board.left + x) + 0.7, toY(board.surface)];
    return [
      rect(at, y - 3.8, wide, 3.5, { weight: weights.dimension, fill: 'white', dash: [0.7, 0.5] }),
      words(text, at + wide / 2, y - 2, { size: 2, align: 'middle' }),
    ];
  });
}

/** Boxes with their steps, and a simple drawing of what is on each. */
function trayMarks({ toX, toY, scale }: Drawing, board: FrontBoard, isMisplaced: (id: string) => boolean): Mark[] {
  return board.trays.flatMap((tray) => {
    const [x, base] = [toX(board.left + tray.x), toY(board.surface)];
    const width = Math.max(1, tray.width / scale);
    const height = Math.max(3.2, tray.height / scale);
    const box = Math.min(height, Math.max(3.2, RIM_MM / scale));
    const text = tray.isMeasured ? tray.step : `${tray.step} ?`.trim();
    return [
      ...contentMarks(tray, x + width * 0.1, base - height, width * 0.8, height - box - 0.25),
      rect(x, base - box, width, box, { fill: 'white', dash: tray.isMeasured ? [] : [0.7, 0.6] }),
      words(text, x + width / 2, base - box / 2, { size: 2.6, weight: 700, align: 'middle' }),
      ...(isMisplaced(tray.id) ? severityMark('should', x + width - 1.1, base - box - 1.6, 2.6) : []),
    ];
  });
}

function contentMarks(tray: FrontTray, x: number, y: number, width: number, height: number): Mark[] {
  const weight = 0.13;
  const marks = contentStrokes(contentOf(tray.tray.material), width * PX, height * PX).map((stroke): Mark => {
    if (stroke.kind === 'line') {
      const points = Array.from({ length: stroke.points.length / 2 }, (_, i) => ({
        x: (stroke.points[2 * i] ?? 0) / PX,
        y: (stroke.points[2 * i + 1] ?? 0) / PX,
      }));
      return line(points, { weight });
    }
    if (stroke.kind === 'ring')
      return round({ x: stroke.x / PX, y: stroke.y / PX }, Math.max(0.1, stroke.radius / PX), { weight, fill: 'white' });
    return rect(stroke.x / PX, stroke.y / PX, stroke.width / PX, stroke.height / PX, { weight, fill: 'white' });
  });
  return shifted(marks, x, y);
}

/** Names as the screen lays them: below the board, none over another, where nothing stands below. */
function nameMarks({ layout, toX, toY, scale, measure }: Drawing): Mark[] {
  const inPx: FrontView = {
    scale: PX / scale,
    toX: (mm) => toX(mm) * PX,
    toY: (mm) => toY(mm) * PX,
    fromX: (px) => (px / PX - toX(0)) * scale,
    fromY: (px) => (toY(0) - px / PX) * scale,
    width: 0,
    height: 0,
    staffAt: 0,
    labelsWidth: 0,
  };
  const together = layout.boards.flatMap(({ trays }) => trays.map(({ name }) => name));
  const standing = standingOn(layout.boards);
  return layout.boards.flatMap((board) => {
    const trays = board.trays.map((tray) => ({
      id: tray.id,
      name: tray.name,
      middle: (board.left + tray.x + tray.width / 2) * inPx.scale,
      linesAt: (from: number, to: number) =>
        linesBelow(board, layout.boards, standing, { from: from / inPx.scale, to: to / inPx.scale }, inPx),
      aside: '',
    }));
    const y = nameTop(board, inPx) / PX;
    const labels = nameLabels(trays, together, layout.width * inPx.scale, (text) => measure(text, NAME) * PX);
    return labels.flatMap(({ lines, x, width }) =>
      lines.map((said, k) =>
        words(said, toX(0) + (x + width / 2) / PX, y + (NAME_LINE / PX) * (k + 0.5), { size: NAME, align: 'middle', ground: 0.2 }),
      ),
    );
  });
}

/** Highest take, eye and see line of the smallest child, each named with its height. */
function lineMarks({ layout, toX, toY, isMirrored }: Drawing, lines: readonly FrontLine[], top: number, floor: number): Mark[] {
  const sign = isMirrored ? -1 : 1;
  const near = isMirrored ? toX(0) : toX(layout.width);
  const far = isMirrored ? toX(layout.width) : toX(0);
  const at = spreadLabels(
    lines.map(({ z }) => toY(z)),
    3.1,
    top - 2,
    floor + 2,
  );
  return lines.flatMap(({ kind, name, text, z }, i) => {
    const y = toY(z);
    const labelY = at[i] ?? y;
    const weight = kind === 'take' ? 0.35 : weights.dimension;
    const [from, end] = [far - sign * 4, near + sign * 2];
    return [
      line(
        [
          { x: from, y },
          { x: end, y },
        ],
        { weight, dash: dashes[kind] },
      ),
      line(
        [
          { x: end, y },
          { x: end + sign * 1.5, y: labelY },
        ],
        { weight: weights.dimension },
      ),
      words(`${name} ${text}`, end + sign * 2.2, labelY, { size: 2.3, align: isMirrored ? 'end' : 'start' }),
    ];
  });
}

/** How high each board lies, beside the shelf. */
function boardHeights({ layout, toX, toY, units, isMirrored, measure }: Drawing): Mark[] {
  const boards = layout.boards.filter(({ level, trays }) => level !== null || trays.length > 0);
  const sign = isMirrored ? 1 : -1;
  const edge = isMirrored ? toX(layout.width) : toX(0);
  const at = spreadLabels(
    boards.map(({ surface }) => toY(surface)),
    2.6,
    -Infinity,
    Infinity,
  );
  return boards.flatMap(({ surface, isSurfaceKnown }, i) => {
    const y = toY(surface);
    const said = isSurfaceKnown ? figure(surface, units) : '?';
    const size = [2.1, 1.8].find((candidate) => measure(said, candidate) < STAFF.toShelf - 5) ?? 1.6;
    return [
      line(
        [
          { x: edge, y },
          { x: edge + sign * 1.6, y },
        ],
        { weight: weights.dimension },
      ),
      words(said, edge + sign * 2.2, at[i] ?? y, { size, align: isMirrored ? 'start' : 'end', ground: 0.2 }),
    ];
  });
}

/** "Top · 0.68 m": how a list calls a board. */
export const sayBoardOf = ({ name, surface, isSurfaceKnown }: FrontBoard, units: LengthUnits): string =>
  `${name} · ${isSurfaceKnown ? sayLength(surface, units) : 'height not known'}`;

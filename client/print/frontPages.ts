import type { SceneSide } from '#model/scene/types.ts';
import { alongBoard } from '../front/readingOrder.ts';
import { checkOf } from '../lists/shelfRows.ts';
import { breakRows, drawRows, type FlowRow, packRows } from './flow.ts';
import { type FrontOnPaper, frontOnPaper, sayBoardOf } from './frontMarks.ts';
import { type Mark, shifted, words } from './marks.ts';
import type { PageDraft, PrintInput } from './pageTypes.ts';
import { type Sheet, sayPaper, sheetOf } from './paper.ts';
import { severityMark } from './severityMark.ts';
import { aboveStrip, stripPage } from './stripPage.ts';
import { headRow, leading } from './table.ts';
import { wrapText } from './wrapText.ts';

const SCALES = [10, 20, 50, 100, 200, 500] as const;
const GAP = 6;

interface Block {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly scale: number;
  readonly isLying: boolean;
}

/** The fronts that were chosen, each as large as the page takes, with the list of its trays. */
export function frontPages(input: PrintInput): PageDraft[] {
  const sides = sidesOf(input, input.choice.fronts);
  const blocks = sides.flatMap((side) => blocksOf(input, side));
  // Fronts of one scale share pages; the order of the shelves stays.
  const runs: Block[][] = [];
  for (const block of blocks) {
    const last = runs.at(-1)?.[0];
    if (last?.scale === block.scale && last.isLying === block.isLying) runs.at(-1)?.push(block);
    else runs.push([block]);
  }
  return runs.flatMap((run) => {
    const [first] = run;
    if (!first) return [];
    const sheet = sheetOf(input.choice.paper, first.isLying);
    const free = aboveStrip(sheet);
    const note = first.scale > 20 ? `too large for 1:20 on ${sayPaper(sheet.paper)}` : '';
    return packRows(run, free, GAP).map((placed) =>
      stripPage(
        sheet,
        'Shelf fronts',
        placed.flatMap(({ item, x, y }) => shifted(item.marks, free.x + x, free.y + y)),
        first.scale,
        note,
      ),
    );
  });
}

/** The open sides that a choice means: of every shelf, or of one. */
export function sidesOf({ scene }: Pick<PrintInput, 'scene'>, chosen: string): readonly SceneSide[] {
  if (chosen === 'none') return [];
  return chosen === 'all' ? scene.sides : scene.sides.filter(({ piece }) => piece.id === chosen);
}

function blocksOf(input: PrintInput, side: SceneSide): Block[] {
  const { front, sheet, scale } = fitFront(input, side);
  const free = aboveStrip(sheet);
  const { isLying } = sheet;
  const same = { scale, isLying };
  const below = trayTable(input, front, Math.max(front.width, Math.min(free.width, 130)));
  const width = Math.max(front.width, below.width);
  if (front.height + 2 + below.height <= free.height)
    return [
      { ...same, width, height: front.height + 2 + below.height, marks: [...front.marks, ...shifted(below.marks, 0, front.height + 2)] },
    ];
  const room = free.width - front.width - GAP;
  const beside = room >= LEAST_WIDE ? trayTable(input, front, room) : null;
  if (beside && beside.height <= free.height)
    return [
      {
        ...same,
        width: front.width + GAP + room,
        height: Math.max(front.height, beside.height),
        marks: [...front.marks, ...shifted(beside.marks, front.width + GAP, 0)],
      },
    ];
  const list = breakRows(trayRows(input, front, side, free.width), [free.height]).map(
    (rows): Block => ({
      ...same,
      width: free.width,
      height: rows.reduce((sum, row) => sum + row.height, 0),
      marks: drawRows(rows, 0, 0),
    }),
  );
  return [{ ...same, width: front.width, height: front.height, marks: front.marks }, ...list];
}

/** At 1:10 where the page takes it, else smaller; the way round that takes more of them, lying when it is the same. */
function fitFront(input: PrintInput, side: SceneSide): { front: FrontOnPaper; sheet: Sheet; scale: number } {
  const { paper, frontScale } = input.choice;
  const [lying, upright] = [sheetOf(paper, true), sheetOf(paper, false)];
  for (const scale of SCALES) {
    if (scale < frontScale) continue;
    const front = frontOnPaper(input, side, scale);
    const [onLying, onUpright] = [countOn(lying, front), countOn(upright, front)];
    if (Math.max(onLying, onUpright) > 0 || scale === SCALES.at(-1)) return { front, sheet: onUpright > onLying ? upright : lying, scale };
  }
  throw new Error('there is a smallest scale');
}

/** mm that the list of trays takes as a rule */
const LIST = 18;

/** How many such fronts a sheet takes, with their lists where there is more than one. */
function countOn(sheet: Sheet, { width, height }: FrontOnPaper): number {
  const free = aboveStrip(sheet);
  if (width > free.width || height > free.height) return 0;
  const high = height + LIST;
  return Math.max(1, Math.floor((free.width + GAP) / (width + GAP)) * Math.floor((free.height + GAP) / (high + GAP)));
}

const SIZE = 2.4;
const SMALL = 2;
const none = { check: '', severity: null } as const;
const STEP_WIDE = 7;
const LEAST_WIDE = 44;

/** The trays as a child meets them, a column for each board. */
export function trayTable(input: PrintInput, { layout }: FrontOnPaper, width: number): { marks: Mark[]; width: number; height: number } {
  const boards = layout.boards.filter(({ level, trays }) => level !== null || trays.length > 0);
  const inRow = Math.max(1, Math.min(boards.length, Math.floor(width / LEAST_WIDE)));
  const wide = width / inRow - 4;
  const marks: Mark[] = [];
  let y = 0;
  for (let i = 0; i < boards.length; i += inRow) {
    const row = boards.slice(i, i + inRow).map((board) => boardRows(input, board, wide));
    row.forEach((rows, k) => {
      marks.push(...drawRows(rows, (k * width) / inRow, y));
    });
    y += Math.max(...row.map((rows) => rows.reduce((sum, { height }) => sum + height, 0))) + 1.5;
  }
  return { marks, width, height: y };
}

function boardRows({ scene, report, measure }: PrintInput, board: FrontOnPaper['layout']['boards'][number], width: number): FlowRow[] {
  const { units, readingDirection } = scene.classroom.display;
  const head = headRow(sayBoardOf(board, units), width, 2.8);
  const rows = alongBoard(board, readingDirection).map((tray): FlowRow => {
    const { check, severity } = report ? checkOf(report, { kind: 'piece', id: tray.id }) : none;
    const topic = severity ? check : '';
    const topicWide = severity ? measure(topic, SMALL) + 4.5 : 0;
    const lines = wrapText(tray.name, width - STEP_WIDE - topicWide, measure, SIZE);
    return {
      height: Math.max(1, lines.length) * leading(SIZE) + 0.5,
      heads: [head],
      draw: (x, y) => [
        words(tray.step, x + STEP_WIDE - 1.5, y + leading(SIZE) / 2, { size: SIZE, weight: 700, align: 'end' }),
        ...lines.map((text, i) => words(text, x + STEP_WIDE, y + leading(SIZE) * (i + 0.5), { size: SIZE })),
        ...(severity ? severityMark(severity, x + width - topicWide + 2.2, y + leading(SIZE) / 2, 2.2) : []),
        words(topic, x + width, y + leading(SIZE) / 2, { size: SMALL, align: 'end' }),
      ],
    };
  });
  return [
    head,
    ...(rows.length > 0
      ? rows
      : [{ height: leading(SIZE), draw: (x: number, y: number) => [words('nothing stands here', x, y + 1.5, { size: SIZE })] }]),
  ];
}

/** The same in one column that can be broken, for a shelf with more than a page of trays. */
function trayRows(input: PrintInput, { layout }: FrontOnPaper, side: SceneSide, width: number): FlowRow[] {
  const title = headRow(`Trays on ${side.piece.name || 'the shelf'}`, width);
  const boards = layout.boards.filter(({ level, trays }) => level !== null || trays.length > 0);
  return [title, ...boards.flatMap((board) => boardRows(input, board, width))];
}

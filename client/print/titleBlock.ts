import type { LengthUnits } from '#model/units/sayLength.ts';
import { line, type Mark, type Measure, rect, weights, words } from './marks.ts';
import type { Box } from './paper.ts';
import { barFor, barMarks } from './scaleBar.ts';
import { cutText, wrapText } from './wrapText.ts';

/** What every printed sheet says of itself. */
export interface TitleFacts {
  readonly className: string;
  /** "ages 3 to 6 · 24 enrolled · 57.60 m² inside" */
  readonly facts: string;
  readonly arrangement: string;
  readonly day: string;
  readonly units: LengthUnits;
}
interface TitleOf {
  /** "Room", "Shelf fronts" */
  readonly what: string;
  /** null: nothing is drawn to scale */
  readonly scale: number | null;
  /** "too large for 1:50 on A4" */
  readonly scaleNote: string;
  /** A plan has its north. */
  readonly isPlan: boolean;
  readonly number: number;
  readonly count: number;
}

export const CAUTION = 'A plan that passes is no licence, no fire certificate and no proof that furniture stands safely.';
const HOLD = 'Print at 100 %';
const LABEL = 2;
/** mm of letters of what is said under the scale, and how wide its field becomes for it at most */
const NOTE = 2.1;
const MOST_NOTE = 62;
/** mm */
const ARROW = { wide: 6, high: 8.4 };

export const STRIP = 17;
const PAD = 1.6;

const rule = (x: number, from: number, to: number): Mark =>
  line(
    [
      { x, y: from },
      { x, y: to },
    ],
    { weight: weights.outline },
  );
const label = (text: string, x: number, y: number): Mark => words(text, x, y, { size: LABEL });

const FACTS = 2.2;

/** Two lines at most; what has no room ends in "…". */
function twoLines(text: string, width: number, measure: Measure, size: number, weight = 400): string[] {
  const [first = '', ...rest] = wrapText(text, width, measure, size, weight);
  return rest.length === 0 ? [first] : [first, cutText(rest.join(' '), width, measure, size, weight)];
}

/** The block as a strip along the foot of a sheet, `STRIP` mm high. */
export function titleStrip(box: Box, facts: TitleFacts, of: TitleOf, measure: Measure): Mark[] {
  const { x, y, width, height } = box;
  const sheetWide = 23;
  const barWide = of.scale === null ? 0 : barFor(of.scale, facts.units).long / of.scale;
  const noteWide = of.scaleNote === '' ? 0 : Math.min(MOST_NOTE, measure(of.scaleNote, NOTE, 400, false) + 2 * PAD);
  const arrowWide = of.isPlan ? ARROW.wide : 0;
  const scaleWide = of.scale === null ? 0 : Math.max(40, barWide + 21 + arrowWide, noteWide);
  const rest = width - sheetWide - scaleWide;
  const [classWide, arrWide] = [rest * 0.44, rest * 0.29];
  const cautionWide = rest - classWide - arrWide;
  const at = {
    arr: x + classWide,
    scale: x + classWide + arrWide,
    caution: x + classWide + arrWide + scaleWide,
    sheet: x + width - sheetWide,
  };
  const cut = (text: string, wide: number, size: number, weight = 400, isTitle = false): string =>
    cutText(text, wide - 2 * PAD, measure, size, weight, isTitle);
  return [
    rect(x, y, width, height, { weight: weights.openSide }),
    ...[at.arr, ...(of.scale === null ? [] : [at.scale]), at.caution, at.sheet].map((line) => rule(line, y, y + height)),
    label('Class', x + PAD, y + 2.6),
    words(cut(facts.className, classWide, 5, 650, true), x + PAD, y + 7.4, { size: 5, weight: 650, isTitle: true }),
    ...twoLines(facts.facts, classWide - 2 * PAD, measure, FACTS).map((text, i) => words(text, x + PAD, y + 12 + i * 2.9, { size: FACTS })),
    label('Arrangement', at.arr + PAD, y + 2.6),
    ...twoLines(facts.arrangement, arrWide - 2 * PAD, measure, 2.9, 650).map((text, i) =>
      words(text, at.arr + PAD, y + 6.4 + i * 3.5, { size: 2.9, weight: 650 }),
    ),
    words(cut(facts.day, arrWide, FACTS), at.arr + PAD, y + 13.3, { size: FACTS }),
    ...(of.scale === null ? [] : scaleInStrip(at.scale, y, of.scale, of.scaleNote, facts.units, scaleWide, measure)),
    ...(!of.isPlan ? [] : northMarks(at.caution - PAD - ARROW.wide / 2, y + 1.6)),
    ...wrapText(CAUTION, cautionWide - 2 * PAD, measure, 2.1)
      .slice(0, 6)
      .map((text, i) => words(text, at.caution + PAD, y + 2.6 + i * 2.55, { size: 2.1 })),
    label(cut(of.what, sheetWide, LABEL), at.sheet + PAD, y + 2.6),
    words('Sheet', at.sheet + PAD, y + 7.2, { size: 2.5 }),
    words(`${of.number} of ${of.count}`, at.sheet + PAD, y + 12, { size: 4, weight: 650, isTitle: true }),
  ];
}

function scaleInStrip(x: number, y: number, scale: number, note: string, units: LengthUnits, wide: number, measure: Measure): Mark[] {
  const notes = [holdOf(scale, units), ...(note === '' ? [] : [note])];
  const first = notes.length === 1 ? 13.6 : 12.3;
  return [
    label(lengthsIn(units), x + PAD, y + 2.6),
    words(`1:${scale}`, x + PAD, y + 7.2, { size: 4.4, weight: 650, isTitle: true }),
    ...barMarks(x + PAD + 15, y + 5.6, scale, units),
    ...notes.map((said, i) => words(cutText(said, wide - 2 * PAD, measure, NOTE), x + PAD, y + first + i * 2.7, { size: NOTE })),
  ];
}

/** "To the east wall": the sheet's top is called north, as on the drawing, whatever the compass says. @param y mm of its tip */
function northMarks(x: number, y: number): Mark[] {
  const foot = y + ARROW.high;
  const barb = (side: number): Mark =>
    line(
      [
        { x: x + side, y: y + 1.8 },
        { x, y },
      ],
      { weight: weights.outline },
    );
  const shaft = line(
    [
      { x, y: foot - 2.8 },
      { x, y },
    ],
    { weight: weights.outline },
  );
  return [shaft, barb(-0.9), barb(0.9), words('N', x, foot - 1.2, { size: 2.6, weight: 650, align: 'middle', isTitle: true })];
}

/** What to hold a ruler to: said whatever else is. */
const holdOf = (scale: number, units: LengthUnits): string => {
  const { text, onPaper } = barFor(scale, units);
  return `${HOLD}: ${text} is ${onPaper}`;
};

const lengthsIn = (units: LengthUnits): string => (units === 'imperial' ? 'Scale; feet and inches' : 'Scale; lengths in metres');

interface Cell {
  readonly height: number;
  readonly draw: (y: number) => Mark[];
}

/** The block as a column, laid on the foot of a box. @returns its marks and how many mm of height it takes. */
export function titleColumn(box: Box, facts: TitleFacts, of: TitleOf, measure: Measure): { marks: Mark[]; height: number } {
  const cells = columnCells(box, facts, of, measure);
  const height = cells.reduce((sum, cell) => sum + cell.height, 0);
  const { x, width } = box;
  let y = box.y + box.height - height;
  const marks: Mark[] = [rect(x, y, width, height, { weight: weights.openSide })];
  cells.forEach((cell, i) => {
    if (i > 0)
      marks.push(
        line(
          [
            { x, y },
            { x: x + width, y },
          ],
          { weight: weights.outline },
        ),
      );
    marks.push(...cell.draw(y));
    y += cell.height;
  });
  return { marks, height };
}

function columnCells(box: Box, facts: TitleFacts, of: TitleOf, measure: Measure): Cell[] {
  const left = box.x + PAD;
  const inner = box.width - 2 * PAD;
  const lines = (text: string, size: number, weight = 400, most = 4): string[] => {
    const all = wrapText(text, inner, measure, size, weight);
    if (all.length <= most) return all;
    return [...all.slice(0, most - 1), cutText(all.slice(most - 1).join(' '), inner, measure, size, weight)];
  };
  const stack = (title: string, parts: readonly { text: string; size: number; weight?: number; isTitle?: boolean }[]): Cell => {
    const rows = parts.flatMap(({ text, size, weight = 400, isTitle = false }) =>
      lines(text, size, weight).map((said) => ({ said, size, weight, isTitle })),
    );
    const high = (size: number): number => size * 1.28;
    return {
      height: 4.2 + rows.reduce((sum, { size }) => sum + high(size), 0) + 0.8,
      draw: (y) => {
        let at = y + 4.2;
        return [
          label(title, left, y + 2.4),
          ...rows.map(({ said, size, weight, isTitle }) => {
            const mark = words(said, left, at + high(size) / 2, { size, weight, isTitle });
            at += high(size);
            return mark;
          }),
        ];
      },
    };
  };
  const cells: Cell[] = [
    stack('Class', [
      { text: facts.className, size: 4.6, weight: 650, isTitle: true },
      { text: facts.facts, size: 2.3 },
    ]),
    stack('Arrangement', [
      { text: facts.arrangement, size: 2.8, weight: 650 },
      { text: facts.day, size: 2.3 },
    ]),
  ];
  const { scale } = of;
  if (scale !== null) {
    const notes = [...lines(holdOf(scale, facts.units), NOTE), ...(of.scaleNote === '' ? [] : lines(of.scaleNote, NOTE))];
    cells.push({
      height: 17 + notes.length * 2.6,
      draw: (y) => [
        label(lengthsIn(facts.units), left, y + 2.4),
        words(`1:${scale}`, left, y + 7, { size: 4.4, weight: 650, isTitle: true }),
        ...barMarks(left + 1, y + 11.2, scale, facts.units),
        ...(of.isPlan ? northMarks(left + inner - ARROW.wide / 2, y + 1.6) : []),
        ...notes.map((note, i) => words(note, left, y + 17 + i * 2.6, { size: NOTE })),
      ],
    });
  }
  cells.push(stack(of.what, [{ text: `Sheet ${of.number} of ${of.count}`, size: 3.4, weight: 650, isTitle: true }]));
  cells.push(stack('Careful', [{ text: CAUTION, size: 2.1 }]));
  return cells;
}

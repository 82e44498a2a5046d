import { areaCode, areaLetters } from '#model/catalogue/areas.ts';
import { catalogueById } from '#model/catalogue/catalogue.ts';
import { sayOrdinal } from '#model/scene/boardWord.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { frontLayout } from '../front/frontLayout.ts';
import { alongBoard } from '../front/readingOrder.ts';
import { sideName, sideTitle } from '../front/shelfNames.ts';
import { breakRows, drawRows, type FlowRow, packRows } from './flow.ts';
import { sidesOf } from './frontPages.ts';
import { hatchOf } from './hatchLines.ts';
import { type Mark, type Measure, rect, weights, words } from './marks.ts';
import type { PageDraft, PrintInput } from './pageTypes.ts';
import { sheetOf } from './paper.ts';
import { aboveStrip, stripPage } from './stripPage.ts';
import { headRow } from './table.ts';
import { cutText, wrapText } from './wrapText.ts';

/** mm: high enough for a board's edge with its holder; the narrow one for trays that are narrower than the wide */
export const LABEL = { height: 25, wide: 92, narrow: 60 } as const;

interface Label {
  readonly width: number;
  readonly height: number;
  readonly material: Material;
  /** "shelf 7, top, 2nd" */
  readonly place: string;
}

/** Strips for the edges of boards, one label a tray in the order of reading, to be cut along the dashed lines. */
export function labelPages(input: PrintInput): PageDraft[] {
  const sheet = sheetOf(input.choice.paper, false);
  const free = aboveStrip(sheet);
  const rows = sidesOf(input, input.choice.labels).flatMap((side) => stripRows(input, side, free.width));
  if (rows.length === 0) return [];
  return breakRows(rows, [free.height]).map((column) => stripPage(sheet, 'Labels', drawRows(column, free.x, free.y)));
}

function stripRows({ scene, measure }: PrintInput, side: SceneSide, width: number): FlowRow[] {
  const labels = labelsOf(scene, side);
  if (labels.length === 0) return [];
  const head = headRow(sideTitle(scene, side), width, 3);
  const [placed = []] = packRows(labels, { width, height: Infinity }, 0);
  const lines = [...new Set(placed.map(({ y }) => y))].map((y) => placed.filter((label) => label.y === y));
  return [
    head,
    ...lines.map(
      (line): FlowRow => ({
        height: LABEL.height,
        heads: [head],
        draw: (x, y) => line.flatMap((label) => labelMarks(scene, label.item, x + label.x, y, measure)),
      }),
    ),
    { height: 3, draw: () => [] },
  ];
}

function labelsOf(scene: Scene, side: SceneSide): Label[] {
  return frontLayout(side).boards.flatMap((board) =>
    alongBoard(board, scene.classroom.display.readingDirection).map(
      (tray, i): Label => ({
        width: tray.isMeasured && tray.width < LABEL.wide ? LABEL.narrow : LABEL.wide,
        height: LABEL.height,
        material: tray.tray.material,
        place: `${sideName(scene, side)}, ${board.name.toLowerCase()}, ${sayOrdinal(i + 1)}`,
      }),
    ),
  );
}

/** What a child has done before, by name; what the class does not have by its name in the catalogue. */
export function needsFirst(scene: Scene, material: Material): string[] {
  return material.after.map((id) => {
    const own = scene.materialById.get(id) ?? scene.classroom.materials.find(({ catalogue }) => catalogue === id);
    return own?.name ?? catalogueById.get(id)?.name ?? id;
  });
}

const FIELD = 17;

function labelMarks(scene: Scene, { material, width, place }: Label, x: number, y: number, measure: Measure): Mark[] {
  const { height } = LABEL;
  const left = x + FIELD + 2;
  const inner = width - FIELD - 4;
  const first = needsFirst(scene, material);
  const name = fitted(material.name, inner, measure, [4, 3.6, 3, 2.6, 2.2], 2, 650);
  const needs = fitted(first.length > 0 ? `needs first: ${first.join(', ')}` : '', inner, measure, [2.4, 2.1, 1.9], 2, 400);
  const area = { area: material.area, strand: material.strand };
  const code = areaCode(area.area, area.strand);
  const field = [
    { x, y },
    { x: x + FIELD, y },
    { x: x + FIELD, y: y + height },
    { x, y: y + height },
  ];
  const nameTop = y + 4.9;
  const nameHigh = name.size * 1.2;
  const step = material.step === null || material.step === undefined ? '' : String(material.step);
  const stepSize = Math.min(9, (9 * (FIELD - 5)) / Math.max(1, measure(step, 9, 700, true)));
  return [
    ...(code ? hatchOf(field, code, 1.6) : []),
    rect(x + 2, y + 2, FIELD - 4, 6, { weight: 0, fill: 'white' }),
    words(areaLetters(area.area, area.strand), x + FIELD / 2, y + 5, { size: 4.2, weight: 700, align: 'middle' }),
    ...(step === ''
      ? []
      : [
          rect(x + 2, y + 10, FIELD - 4, 12.5, { weight: weights.outline, fill: 'white' }),
          words(step, x + FIELD / 2, y + 16.4, { size: stepSize, weight: 700, align: 'middle', isTitle: true }),
        ]),
    rect(x, y, width, height, { weight: weights.dimension, dash: [1.5, 1] }),
    words(cutText(material.strand || material.area, inner, measure, 2.4), left, y + 3.2, { size: 2.4, isItalic: true }),
    ...name.lines.map((text, i) => words(text, left, nameTop + nameHigh * (i + 0.5), { size: name.size, weight: 650 })),
    ...needs.lines.map((text, i) => words(text, left, y + 17.3 + needs.size * 1.2 * i, { size: needs.size })),
    words(cutText(place, inner, measure, 1.9), x + width - 2, y + height - 2, { size: 1.9, align: 'end' }),
  ];
}

/** The text in so many lines at the largest size at which it has room; at the least it ends in "…". */
function fitted(
  text: string,
  width: number,
  measure: Measure,
  sizes: readonly number[],
  most: number,
  weight: number,
): { lines: string[]; size: number } {
  for (const size of sizes) {
    const lines = wrapText(text, width, measure, size, weight);
    if (lines.length <= most) return { lines, size };
  }
  const size = sizes.at(-1) ?? 2;
  const lines = wrapText(text, width, measure, size, weight);
  return { size, lines: [...lines.slice(0, most - 1), cutText(lines.slice(most - 1).join(' '), width, measure, size, weight)] };
}

import { add, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { type Box, roundPlace } from '../moveDay/clearPlaces.ts';
import type { Day } from '../moveDay/dayOf.ts';
import { moveArrow } from '../moveDay/moveArrow.ts';
import { cornersOfWords, line, type Mark, round, shape, weights, words } from './marks.ts';
import type { PaperPen } from './paperPen.ts';
import type { PlanLayer } from './planMarks.ts';
import type { Sign } from './signRows.ts';

/** mm: radius of a step's number; the head of an arrow; from the head to the middle of the place it points to */
const ROUND = 2;
const HEAD = { long: 2.2, wide: 0.8 } as const;
const BEFORE = 3.4;
/** Places are looked for in px of a screen: so many to 1 mm of paper. */
const PX = 4.5;
const NOW = [1.6, 1] as const;
const FOR_A_WHILE = [0.5, 0.9] as const;

const ring = (pen: PaperPen, body: SceneBody): Point[] => body.footprint.map(pen.at);

/** How the room stands now dashed, where pieces wait for a while dotted, and numbered arrows, over the plan of how it will stand. */
export function moveLayer(day: Day): PlanLayer {
  const { plan, names } = day;
  return {
    numberOf: (piece) => names.number(plan.earlierId(piece)),
    under: (pen) => plan.units.flatMap(({ from }) => from.map((body) => shape(ring(pen, body), { dash: NOW }))),
    over: (pen, drawn) => [
      ...[...plan.sequence.places.values()].flatMap((bodies) =>
        (bodies ?? []).flatMap((body) => {
          const { x, y } = pen.at(body.center);
          return [shape(ring(pen, body), { dash: FOR_A_WHILE }), words('for a while', x, y, { size: 2, align: 'middle', ground: 0.4 })];
        }),
      ),
      ...arrowMarks(day, pen, drawn),
    ],
  };
}

function arrowMarks(day: Day, pen: PaperPen, drawn: readonly Mark[]): Mark[] {
  const names = drawn.flatMap((mark) => (mark.kind === 'words' ? [boxOf(cornersOfWords(mark, pen.measure))] : []));
  const arrows = day.steps.flatMap((one) => {
    const arrow = moveArrow(day, one, { at: pen.at, before: BEFORE, least: 2 * ROUND });
    return arrow ? [{ one, points: arrow.points, onScreen: arrow.points.map((p) => scale(p, PX)) }] : [];
  });
  const rounds: Point[] = [];
  const numbers = arrows.map(({ one, onScreen }) => {
    const place = roundPlace(onScreen, ROUND * PX, { names, rounds, arrows: arrows.map(({ onScreen: points }) => ({ points })) });
    rounds.push(place);
    return { number: one.number, at: scale(place, 1 / PX) };
  });
  return [
    ...arrows.flatMap(({ points }) => arrowMark(points)),
    ...numbers.flatMap(({ number, at }) => [
      round(at, ROUND, { fill: 'white' }),
      words(String(number), at.x, at.y, { size: 2.3, weight: 700, align: 'middle' }),
    ]),
  ];
}

function arrowMark(points: readonly Point[]): Mark[] {
  const [before, tip] = [points.at(-2), points.at(-1)];
  if (!before || !tip) return [];
  const along = unit(sub(tip, before));
  const foot = add(tip, scale(along, -HEAD.long));
  const across = { x: -along.y * HEAD.wide, y: along.x * HEAD.wide };
  return [line(points, { weight: weights.openSide }), shape([tip, add(foot, across), sub(foot, across)], { weight: 0, fill: 'black' })];
}

function boxOf(corners: readonly Point[]): Box {
  const xs = corners.map(({ x }) => x * PX);
  const ys = corners.map(({ y }) => y * PX);
  const [left, right, top, foot] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { center: { x: (left + right) / 2, y: (top + foot) / 2 }, width: right - left, height: foot - top };
}

/** What the lines of the move mean. */
export const moveSigns: readonly Sign[] = [
  { text: 'stands here now', draw: (x, y) => [sign(x, y, NOW)] },
  { text: 'stands here after', draw: (x, y) => [sign(x, y, [])] },
  { text: 'waits here for a while', draw: (x, y) => [sign(x, y, FOR_A_WHILE)] },
  {
    text: 'a step of the list',
    draw: (x, y) => [round({ x: x + 4, y }, 1.6), words('1', x + 4, y, { size: 2, weight: 700, align: 'middle' })],
  },
];

const sign = (x: number, y: number, dash: readonly number[]): Mark =>
  shape(
    [
      { x, y: y - 1.4 },
      { x: x + 8, y: y - 1.4 },
      { x: x + 8, y: y + 1.4 },
      { x, y: y + 1.4 },
    ],
    { dash },
  );

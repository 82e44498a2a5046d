import type { Box } from '#model/geometry/polygon.ts';
import { add, distance, dot, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneOpening, SceneRoom, SceneWall } from '#model/scene/types.ts';
import type { Zone } from '#model/schema/types.ts';
import { WALL } from '../plan/draw/drawRoom.ts';
import { readable } from '../plan/draw/pen.ts';
import { hingesAtA } from '../plan/hinge.ts';
import { barsAcross, barsDown } from '../plan/neatline.ts';
import { cutsOf, isOutermost } from '../plan/outerStrings.ts';
import { figure } from '../text/figure.ts';
import { hatchOf } from './hatchLines.ts';
import { arc, line, type Mark, rect, shape, weights, words } from './marks.ts';
import type { PaperPen } from './paperPen.ts';
import { cutText } from './wrapText.ts';

/** mm on paper from the measured inner face to the outer one. */
const thickOf = (pen: PaperPen): number => Math.max(weights.wall, WALL / pen.scale);

/** Floor and walls. The black of the inner line ends where the floor was measured: its edge is the wall's face. */
export function wallMarks(pen: PaperPen, room: SceneRoom): Mark[] {
  const ring = room.outline.map(pen.at);
  const thick = thickOf(pen);
  const isDouble = thick > 2 * weights.wall;
  return [
    shape(ring, { weight: 2 * weights.wall, isMitred: true }),
    ...(isDouble ? [shape(outerRing(pen, room, thick - weights.wall / 2), { weight: weights.wall, isMitred: true })] : []),
    shape(ring, { weight: 0, fill: 'white' }),
  ];
}

/** The walls' corners moved outwards by so many mm of paper. */
function outerRing(pen: PaperPen, { walls }: SceneRoom, by: number): Point[] {
  return walls.map((wall, i) => {
    const before = walls.at(i - 1) ?? wall;
    const sum = add(before.inward, wall.inward);
    const sharp = 1 + dot(before.inward, wall.inward);
    const shift = sharp > 0.15 ? scale(sum, -by / sharp) : scale(wall.inward, -by);
    return add(pen.at(wall.a), shift);
  });
}

/** The gap in the wall, and in it a leaf with its swing, a window's three lines, or nothing. */
export function openingMarks(pen: PaperPen, opening: SceneOpening): Mark[] {
  const [a, b] = [pen.at(opening.a), pen.at(opening.b)];
  const outward = scale(opening.wall.inward, -1);
  const thick = thickOf(pen);
  const out = scale(outward, thick);
  // A hair over on both faces, or a printer shows where the two meet.
  const over = scale(outward, thick + 0.1);
  const under = scale(outward, -0.05);
  return [
    shape([add(a, under), add(b, under), add(b, over), add(a, over)], { weight: 0, fill: 'white' }),
    line([a, add(a, out)], { weight: weights.openSide }),
    line([b, add(b, out)], { weight: weights.openSide }),
    ...inGap(opening, a, b, out, outward),
  ];
}

function inGap(opening: SceneOpening, a: Point, b: Point, out: Point, outward: Point): Mark[] {
  const through = (share: number, p: Point): Point => add(p, scale(out, share));
  const { kind, swing } = opening.raw;
  if (kind === 'window') return [0, 0.5, 1].map((share) => line([through(share, a), through(share, b)]));
  if (kind === 'passage') return [line([a, b], { weight: weights.dimension, dash: [0.8, 0.6] })];
  if (swing === 'none') return [line([through(0.5, a), through(0.5, b)])];
  if (swing === 'sliding')
    return [
      line([through(0.35, a), through(0.35, lerp(a, b, 0.58))], { weight: weights.openSide }),
      line([through(0.65, lerp(a, b, 0.42)), through(0.65, b)], { weight: weights.openSide }),
    ];
  const { hinge, latch, open } = leafOf(opening, a, b, out, outward);
  return [line([hinge, open], { weight: weights.openSide }), arc(hinge, latch, open, weights.dimension)];
}

function leafOf(opening: SceneOpening, a: Point, b: Point, out: Point, outward: Point) {
  const isIn = opening.raw.swing.startsWith('in-');
  const face = isIn ? { x: 0, y: 0 } : out;
  const isAtA = hingesAtA(opening);
  const hinge = add(isAtA ? a : b, face);
  const latch = add(isAtA ? b : a, face);
  return { hinge, latch, open: add(hinge, scale(outward, (isIn ? -1 : 1) * distance(hinge, latch))) };
}

const isLeafOut = ({ raw }: SceneOpening): boolean => raw.kind === 'door' && raw.swing.startsWith('out-');
const nameOf = ({ raw }: SceneOpening): string => raw.name?.trim() ?? '';
const NAME = 2.6;

/** Where a door leads: outside before its gap; one that swings out has it in its swing. A long one keeps within its wall, cut where it must. */
export function openingNames(pen: PaperPen, { openings }: SceneRoom): Mark[] {
  return openings.flatMap((opening) => {
    const { wall } = opening;
    const [a, b] = [pen.at(opening.a), pen.at(opening.b)];
    const [start, end] = [pen.at(wall.a), pen.at(wall.b)];
    const name = cutText(nameOf(opening), distance(start, end), pen.measure, NAME, 400, true);
    if (name === '') return [];
    const outward = scale(wall.inward, -1);
    const along = unit(sub(end, start));
    const angle = readable(along.x, along.y);
    const thick = thickOf(pen);
    const style = { size: NAME, isTitle: true, isItalic: true, angle, align: 'middle' } as const;
    const width = pen.measure(name, NAME, 400, true);
    const withinWall = (p: Point): Point => {
      const at = dot(sub(p, start), along);
      return add(start, scale(along, Math.max(width / 2, Math.min(distance(start, end) - width / 2, at))));
    };
    if (!isLeafOut(opening)) {
      const middle = lerp(a, b, 0.5);
      const at = add(width > distance(a, b) ? withinWall(middle) : middle, scale(outward, thick + 0.6 + NAME / 2));
      return [words(name, at.x, at.y, style)];
    }
    const { hinge, latch } = leafOf(opening, a, b, scale(outward, thick), outward);
    const wide = distance(hinge, latch);
    const fits = width < wide * 0.8;
    const at = add(
      fits ? lerp(hinge, latch, 0.46) : add(withinWall(lerp(a, b, 0.5)), scale(outward, thick)),
      scale(outward, fits ? wide * 0.36 : wide + NAME / 2 + 0.8),
    );
    return [words(name, at.x, at.y, { ...style, ground: fits ? 0.2 : 0 })];
  });
}

/** Floor that a rule set leaves out of the count, with its use in words. */
export function zoneMarks(pen: PaperPen, zones: readonly Zone[]): Mark[] {
  return zones.flatMap((zone) => {
    const ring = zone.outline.map(([x, y]) => pen.at({ x, y }));
    const middle = scale(ring.reduce(add, { x: 0, y: 0 }), 1 / Math.max(1, ring.length));
    return [
      ...hatchOf(ring, 'uncounted', 2.4),
      shape(ring, { weight: weights.dimension, dash: [0.8, 0.6] }),
      words(zone.kind, middle.x, middle.y, { size: 2.2, align: 'middle', ground: 0.4 }),
    ];
  });
}

/** mm on paper: from one string to the next, and the figures' size */
const STRING = { apart: 3.8, size: 2.2, least: 1.7 } as const;

/** Strings outside the outermost walls: each wall's length, and closer in the pieces its openings cut it into. */
export function stringMarks(pen: PaperPen, room: SceneRoom, bounds: Box): Mark[] {
  const thick = thickOf(pen);
  return room.walls.flatMap((wall) => {
    const long = distance(wall.a, wall.b);
    if (!isOutermost(wall, bounds) || long === 0) return [];
    const own = room.openings.filter((opening) => opening.wall === wall);
    const leaf = Math.max(0, ...own.filter(isLeafOut).map(({ a, b }) => distance(a, b) / pen.scale));
    const past = thick + Math.max(leaf > 0 ? leaf + 0.6 : 0, own.some((opening) => nameOf(opening) !== '') ? NAME + 1.2 : 0.8);
    const cuts = cutsOf(room, wall);
    const hasChain = cuts.length > 2;
    return [
      ...(hasChain ? cuts.slice(1).flatMap((to, i) => stringOf(pen, wall, cuts[i] ?? 0, to, past + 1.5)) : []),
      ...stringOf(pen, wall, 0, long, past + 1.5 + (hasChain ? STRING.apart : 0)),
    ];
  });
}

function stringOf(pen: PaperPen, wall: SceneWall, from: number, to: number, off: number): Mark[] {
  const along = unit(sub(wall.b, wall.a));
  const end = (mm: number): Point => add(pen.at(add(wall.a, scale(along, mm))), scale(wall.inward, -off));
  return dimensionMarks(pen, end(from), end(to), to - from);
}

/** Line, slashed ends, and the figure on it where it fits between them. `mm`: what it says. */
function dimensionMarks(pen: PaperPen, from: Point, to: Point, mm: number): Mark[] {
  const along = unit(sub(to, from));
  const slash = { x: 0.8, y: -0.8 };
  const text = figure(mm, pen.units);
  const room = distance(from, to) - 1.6;
  const size = [STRING.size, STRING.least].find((candidate) => pen.measure(text, candidate) <= room);
  const middle = lerp(from, to, 0.5);
  return [
    line([from, to], { weight: weights.dimension }),
    ...[from, to].map((p) => line([sub(p, slash), add(p, slash)], { weight: weights.outline })),
    ...(size === undefined
      ? []
      : [words(text, middle.x, middle.y, { size, align: 'middle', angle: readable(along.x, along.y), ground: 0.4 })]),
  ];
}

/** mm: how thick the neatline is, and how far from the drawing */
export const NEATLINE = { thick: 4.2, gap: 1 } as const;

/** One-metre bars along the top and the left of the drawing: letters across, numbers down. `top`, `left`: mm of their inner edges. */
export function neatlineMarks(pen: PaperPen, bounds: Box, top: number, left: number): Mark[] {
  const { thick } = NEATLINE;
  const bar = 1000 / pen.scale;
  const every = [1, 2, 5, 10, 20, 50].find((n) => n * bar > 4) ?? 100;
  const label = (text: string, i: number, x: number, y: number, long: number): Mark[] =>
    i % every === 0 && (every > 1 || long > 2.4) ? [words(text, x, y, { size: 2.5, weight: 650, align: 'middle' })] : [];
  return [
    ...barsAcross(bounds).flatMap(({ from, to, label: text }, i) => {
      const [x0, x1] = [pen.at({ x: from, y: 0 }).x, pen.at({ x: to, y: 0 }).x];
      return [rect(x0, top - thick, x1 - x0, thick), ...label(text, i, (x0 + x1) / 2, top - thick / 2, x1 - x0)];
    }),
    ...barsDown(bounds).flatMap(({ from, to, label: text }, i) => {
      const [y0, y1] = [pen.at({ x: 0, y: from }).y, pen.at({ x: 0, y: to }).y];
      return [rect(left - thick, y0, thick, y1 - y0), ...label(text, i, left - thick / 2, (y0 + y1) / 2, y1 - y0)];
    }),
  ];
}

/** A small cross at each metre of the neatline, on the floor only. */
export function gridMarks(pen: PaperPen, bounds: Box, isOnFloor: (p: Point) => boolean): Mark[] {
  const marks: Mark[] = [];
  const step = 1000 * Math.max(1, Math.ceil((4 * pen.scale) / 1000));
  for (let x = bounds.minX + step; x < bounds.maxX; x += step)
    for (let y = bounds.minY + step; y < bounds.maxY; y += step) {
      if (!isOnFloor({ x, y })) continue;
      const p = pen.at({ x, y });
      marks.push(line([add(p, { x: -0.6, y: 0 }), add(p, { x: 0.6, y: 0 })], { weight: weights.hatch }));
      marks.push(line([add(p, { x: 0, y: -0.6 }), add(p, { x: 0, y: 0.6 })], { weight: weights.hatch }));
    }
  return marks;
}

import { type Eye, inPicture } from '#model/measures/kneelView.ts';
import type { SceneBoard, SceneSide, SceneTray } from '#model/scene/types.ts';
import { UNMEASURED } from '../frontLayout.ts';

/** mm on the picture, heights upwards */
export interface PicturePoint {
  readonly x: number;
  readonly z: number;
}
export interface Face {
  readonly of: 'floor' | 'back' | 'panel' | 'board' | 'edge' | 'front' | 'top' | 'side';
  readonly points: readonly PicturePoint[];
}
export interface DrawnTray {
  readonly tray: SceneTray;
  readonly isMeasured: boolean;
  readonly faces: readonly Face[];
  /** The whole of its front face on the picture. */
  readonly front: Box;
  /** What lies upright within its top face; its width or height is 0 where she does not look down on it. */
  readonly top: Box;
}
/** mm on the picture, from its lower left corner */
interface Box {
  readonly x: number;
  readonly z: number;
  readonly width: number;
  readonly height: number;
}
/** mm on the picture */
interface Rail {
  readonly from: number;
  readonly to: number;
}
/** What is seen through one opening: between two boards, or above the topmost. */
export interface Opening {
  readonly key: string;
  /** The opening on the front's plane; to: null where it is open above. */
  readonly from: number;
  readonly to: number | null;
  readonly left: number;
  readonly right: number;
  /** The shelf's upper edge before it, where no board closes the shelf there: nothing is written across it. */
  readonly rail: Rail | null;
  readonly inside: readonly Face[];
  readonly trays: readonly DrawnTray[];
}
export interface KneelDrawing {
  /** The shelf's own insides, behind everything. */
  readonly behind: readonly Face[];
  readonly openings: readonly Opening[];
  /** Front edges of boards and panels, before everything. */
  readonly edges: readonly Face[];
  readonly width: number;
  /** mm above the floor of the highest thing on the picture */
  readonly top: number;
}

/** mm: boards are drawn this thick */
const BOARD = 20;
/** mm of a shelf whose height nobody measured, above its highest board */
const OPEN_ABOVE = 250;
/** mm: a thing of unknown depth is drawn this deep, dashed */
const UNMEASURED_DEPTH = 150;

/** A shelf side from an eye before it, as faces to draw one after the other. */
export function kneelDrawing(side: SceneSide, eye: Eye): KneelDrawing {
  const { piece, width } = side;
  const see = (x: number, y: number, z: number): PicturePoint => inPicture(eye, { x, y, z });
  const highest = Math.max(0, ...side.boards.map((board) => board.surface ?? 0));
  const height = piece.height ?? highest + OPEN_ABOVE;
  const through = side.side === 'left' || side.side === 'right' ? piece.width : piece.depth;
  const isOpenBehind = piece.sides.includes(opposite[side.side]);
  const deep = isOpenBehind && piece.divider ? through / 2 : through;
  const panel = piece.panel;
  const wall = (x: number): Face => ({ of: 'panel', points: [see(x, 0, 0), see(x, deep, 0), see(x, deep, height), see(x, 0, height)] });
  const back: Face = { of: 'back', points: [see(0, deep, 0), see(width, deep, 0), see(width, deep, height), see(0, deep, height)] };
  const floor: Face = { of: 'floor', points: [see(0, 0, 0), see(width, 0, 0), see(width, deep, 0), see(0, deep, 0)] };
  const hasTop = side.boards.some((board) => board.surface !== null && board.level !== null && board.surface >= height - 1);
  const rail = hasTop ? null : { from: height - BOARD, to: height };
  const openings = side.boards.flatMap((board) => openingOf(side, board, eye, rail));
  const edge = (x: number, wide: number, z: number, high: number): Face => ({
    of: 'edge',
    points: [see(x, 0, z), see(x + wide, 0, z), see(x + wide, 0, z + high), see(x, 0, z + high)],
  });
  const boardEdges = side.boards.flatMap((board): Face[] => {
    if (board.surface === null || board.level === null) return [];
    const left = (width - board.width) / 2;
    const at = (x: number, z: number): PicturePoint => see(x, board.setBack, z);
    const [z, bottom, right] = [board.surface, board.surface - BOARD, left + board.width];
    return [{ of: 'edge', points: [at(left, bottom), at(right, bottom), at(right, z), at(left, z)] }];
  });
  const tops = openings.flatMap(({ trays }) => trays.map(({ front }) => front.z + front.height));
  return {
    behind: [...(isOpenBehind && !piece.divider ? [] : [back]), floor, wall(panel), wall(width - panel)],
    openings,
    edges: [
      ...boardEdges,
      edge(0, panel, 0, height),
      edge(width - panel, panel, 0, height),
      ...(rail ? [edge(0, width, rail.from, BOARD)] : []),
    ],
    width,
    top: Math.max(height, eye.height, ...tops),
  };
}

const opposite = { front: 'back', back: 'front', left: 'right', right: 'left' } as const;

function openingOf(side: SceneSide, board: SceneBoard, eye: Eye, rail: Rail | null): Opening[] {
  const { surface, setBack, depth, clear } = board;
  if (surface === null) return [];
  const left = (side.width - board.width) / 2;
  const right = left + board.width;
  const see = (x: number, y: number, z: number): PicturePoint => inPicture(eye, { x, y, z });
  const level = (z: number, of: Face['of']): Face => ({
    of,
    points: [see(left, setBack, z), see(right, setBack, z), see(right, setBack + depth, z), see(left, setBack + depth, z)],
  });
  const above = clear === null ? null : surface + clear;
  const inside = [
    ...(eye.height > surface ? [level(surface, 'board')] : []),
    ...(above !== null && eye.height < above ? [level(above, 'board')] : []),
  ];
  const trays = [...board.trays]
    .map((tray) => drawnTray(tray, board, left, eye))
    // The farthest first; of those as far as one another the one farther to the side.
    .sort((p, q) => q.far - p.far || q.aside - p.aside)
    .map(({ drawn }) => drawn);
  const before = rail && surface < rail.to && (above === null || above > rail.from) ? rail : null;
  return [{ key: board.level?.id ?? 'top', from: surface, to: above, left, right, rail: before, inside, trays }];
}

function drawnTray(tray: SceneTray, board: SceneBoard, left: number, eye: Eye): { drawn: DrawnTray; far: number; aside: number } {
  const isMeasured = tray.width !== null && tray.depth !== null && tray.height !== null;
  const [wide, high, deep] = [tray.width ?? UNMEASURED.width, tray.height ?? UNMEASURED.height, tray.depth ?? UNMEASURED_DEPTH];
  const x = [left + tray.placement.x, left + tray.placement.x + wide] as const;
  const y = [board.setBack + tray.placement.y, board.setBack + tray.placement.y + deep] as const;
  const z = [board.surface ?? 0, (board.surface ?? 0) + high] as const;
  const see = (px: number, py: number, pz: number): PicturePoint => inPicture(eye, { x: px, y: py, z: pz });
  const faces: Face[] = [];
  if (eye.height > z[1])
    faces.push({ of: 'top', points: [see(x[0], y[0], z[1]), see(x[1], y[0], z[1]), see(x[1], y[1], z[1]), see(x[0], y[1], z[1])] });
  for (const edge of [eye.along < x[0] ? x[0] : null, eye.along > x[1] ? x[1] : null])
    if (edge !== null)
      faces.push({ of: 'side', points: [see(edge, y[0], z[0]), see(edge, y[1], z[0]), see(edge, y[1], z[1]), see(edge, y[0], z[1])] });
  const [low, top] = [see(x[0], y[0], z[0]), see(x[1], y[0], z[1])];
  faces.push({ of: 'front', points: [low, { x: top.x, z: low.z }, top, { x: low.x, z: top.z }] });
  const [backLeft, backRight] = [see(x[0], y[1], z[1]), see(x[1], y[1], z[1])];
  const [topLeft, topRight] = [Math.max(low.x, backLeft.x), Math.min(top.x, backRight.x)];
  const upper = { x: topLeft, z: top.z, width: Math.max(0, topRight - topLeft), height: Math.max(0, backLeft.z - top.z) };
  const drawn = { tray, isMeasured, faces, top: upper, front: { x: low.x, z: low.z, width: top.x - low.x, height: top.z - low.z } };
  return { drawn, far: y[1], aside: Math.abs((x[0] + x[1]) / 2 - eye.along) };
}

/** What its opening lets through of a thing's face on the picture, on the larger side of a rail; its height is 0 where boards hide all of it. */
export function seenFace({ front, top }: DrawnTray, opening: Opening, which: 'front' | 'top' = 'front'): Box {
  const face = which === 'front' ? front : top;
  const sides = opening.to === null ? ([-Infinity, Infinity] as const) : ([opening.left, opening.right] as const);
  const [x, right] = [Math.max(face.x, sides[0]), Math.min(face.x + face.width, sides[1])];
  const [z, end] = besideRail(Math.max(face.z, opening.from), Math.min(face.z + face.height, opening.to ?? Infinity), opening.rail);
  return { x: Math.min(x, right), z: Math.min(z, opening.to ?? z), width: Math.max(0, right - x), height: Math.max(0, end - z) };
}

function besideRail(z: number, end: number, rail: Rail | null): readonly [number, number] {
  if (!rail || end <= rail.from || z >= rail.to) return [z, end];
  return rail.from - z >= end - rail.to ? [z, rail.from] : [rail.to, end];
}

/** The end of the line at her eyes where its words lie on less of what stands there. mm: the words, and how far the picture goes on beside the shelf */
export function levelWordsAt(drawing: KneelDrawing, eye: Eye, words: { readonly width: number; readonly height: number }, beside: number) {
  const points = drawing.openings.flatMap(({ trays }) => trays.map(({ faces }) => faces.flatMap((face) => face.points)));
  const spans = points.filter((all) => all.some(({ z }) => z >= eye.height) && all.some(({ z }) => z <= eye.height + words.height));
  const covered = (from: number, to: number): number =>
    spans.reduce((sum, all) => {
      const xs = all.map(({ x }) => x);
      return sum + Math.max(0, Math.min(to, Math.max(...xs)) - Math.max(from, Math.min(...xs)));
    }, 0);
  const [left, right] = [-beside, drawing.width + beside - words.width];
  return covered(right, right + words.width) < covered(left, left + words.width) ? right : left;
}

/**
 * Where the mark of a thing stands: on its own face, at its left end beside its name, in the middle where it is narrow,
 * and within the opening it stands in, so that no mark lies on something else.
 * @param radius mm of the picture
 */
export function markOn(face: Box, opening: Opening, radius: number): PicturePoint {
  const x = face.width < 5 * radius ? face.x + face.width / 2 : face.x + 1.6 * radius;
  const top = opening.to === null ? Infinity : opening.to - radius;
  return { x, z: Math.min(top, Math.max(opening.from + radius, face.z + face.height / 2)) };
}

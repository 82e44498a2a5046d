import { packingBound } from '../geometry/packingBound.ts';
import { type PackingTask, packSearch } from '../geometry/packingSearch.ts';
import { MOST_TILES, type PackingFloor } from '../geometry/packingSpace.ts';
import { type Tile, type TilePlace, tileRing } from '../geometry/tile.ts';
import type { Scene } from '../scene/types.ts';
import { roundMm } from '../units/round.ts';
import { accessFigures } from './accessFigures.ts';
import { matFloor, matTurns } from './floor.ts';
import { matLanes } from './matLanes.ts';
import type { SeatStrip } from './seats.ts';
import { keeperOfMeasured, type WaysKeeper, waysKeeper } from './waysKeep.ts';
import type { WaysMeasure } from './waysMeasure.ts';

/** Work mats that lie on the floor at once, beside one another and with every way kept. */
export interface Mats {
  /** At least so many: they lie at `places`. */
  readonly count: number;
  /** At most so many, by the area that mats can cover; ways are left out of this. */
  readonly upperBound: number;
  /** The two are equal: exactly so many. */
  readonly proven: boolean;
  readonly places: readonly TilePlace[];
  readonly tile: Tile;
}

/** How long to look for places: a number is so many times the better. */
export type Effort = 'quick' | 'better' | number;
/** In questions to the ways; fewer where each question is long. Rounds of laying anew go by the questions that are left for them. */
const efforts = {
  quick: { questions: 12, guesses: 1, rounds: 0, work: 2_000 },
  better: { questions: 400, guesses: 6, rounds: 600, work: 60_000 },
} as const;

function workOf(effort: Effort) {
  if (typeof effort !== 'number') return efforts[effort];
  const { questions, guesses, rounds, work } = efforts.better;
  return { questions: questions * effort, guesses: guesses * effort, rounds: rounds * effort, work: work * effort };
}

/** More mats than any classroom's floor takes make each question longer: by so many obstacles each. */
const USUAL_MATS = 60;
const EACH_MORE = 2;
/** Mats of hand's breadth have gaps to all of the others within a way's width: each such pair as so much of an obstacle. */
const USUAL_NEAR = 8;
const EACH_PAIR = 0.35;
/** What it takes to mend a first laying, however long each question is. */
const LEAST_QUESTIONS = 8;

/**
 * Null where the walls do not hold. The same room gives the same answer on every device.
 * @param measured the ways of the scene, where they are measured already
 * @param isOver ends the search before its work is done: then the answer depends on the device
 */
export function measureMats(
  scene: Scene,
  strips: readonly SeatStrip[],
  effort: Effort,
  measured?: WaysMeasure,
  isOver?: () => boolean,
): Mats | null {
  if (!scene.room.isSound) return null;
  const { mat, gap } = scene.classroom.floorWork;
  const tile: Tile = { width: mat.width, depth: mat.depth, gap };
  const floor = matFloor(scene, strips);
  const turns = matTurns(scene, Math.min(mat.width, mat.depth));
  const upperBound = packingBound(floor, tile, turns);
  const wanted = { floor, tile, turns, most: Math.min(upperBound, MOST_TILES), ...(isOver && { isOver }) };
  const places =
    upperBound === 0 ? [] : search(scene, strips, measured ? keeperOfMeasured(scene, measured) : waysKeeper(scene), wanted, effort);
  return { count: places.length, upperBound, proven: places.length === upperBound, places, tile };
}

type Wanted = Pick<PackingTask, 'floor' | 'tile' | 'turns' | 'most' | 'isOver'>;

function search(scene: Scene, strips: readonly SeatStrip[], keeper: WaysKeeper, wanted: Wanted, effort: Effort): TilePlace[] {
  const { floor, tile, turns } = wanted;
  const { questions, guesses, rounds, work } = workOf(effort);
  const affordable = Math.floor(work / questionCost(wanted, accessFigures(scene).routeMeets));
  let lanes: ReturnType<typeof matLanes> | null = null;
  return packSearch({
    ...wanted,
    inTheWay: (places) => keeper.inTheWay(places.map((place) => tileRing(tile, place))),
    lanes: (random) => {
      lanes ??= matLanes(scene, strips, floor, tile, keeper.ways, turns[0] ?? 0);
      return lanes(random);
    },
    guesses,
    rounds,
    questions: Math.min(questions, Math.max(LEAST_QUESTIONS, affordable)),
    seed: seedOf(floor),
  });
}

/** How long a question is, in obstacles. @param way mm: gaps narrower than this count */
function questionCost({ floor, tile: { width, depth, gap }, most }: Wanted, way: number): number {
  const near = Math.min(most, ((way + width + gap) * (way + depth + gap)) / ((width + gap) * (depth + gap)));
  const pairs = (most * Math.max(0, near - USUAL_NEAR)) / 2;
  return floor.obstacles.length + EACH_MORE * Math.max(0, most - USUAL_MATS) + EACH_PAIR * pairs;
}

/** A whole number that says this floor apart from others: from its corners to the mm. */
function seedOf(floor: PackingFloor): number {
  let seed = 17;
  for (const ring of [floor.outline, ...floor.obstacles])
    for (const p of ring) seed = (Math.imul(seed, 31) + Math.round(p.x) + Math.imul(Math.round(p.y), 7)) | 0;
  return seed;
}

/** Mats as the report lists them; null: the walls do not hold. */
export function reportMats(mats: Mats | null) {
  if (!mats) return null;
  const { count, upperBound, proven, places, tile } = mats;
  return {
    count,
    upperBound,
    proven,
    places: places.map(({ x, y, turn }) => ({
      x: roundMm(x),
      y: roundMm(y),
      width: roundMm(tile.width),
      depth: roundMm(tile.depth),
      rotation: Math.round(turn * 1e6) / 1e6,
    })),
  };
}

import { type Adjusted, adjustNetwork, type Observation } from '../geometry/network.ts';
import { traverse } from '../geometry/traverse.ts';
import { distance, type Point } from '../geometry/vec.ts';

/** A wall as it was taped, in the order of the walk. mm, degrees clockwise from this wall to the next. */
export interface TapedWall {
  /** null: not taped */
  readonly length: number | null;
  readonly turn: number;
  /** The angle is not known but by diagonals; `turn` then says to which side it bends. */
  readonly isTurnFree: boolean;
}
/** By the index of the corners; corner i is where wall i begins. mm */
export interface TapedDiagonal {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** Which measurement: of a wall, of the turn after a wall, of a diagonal. */
export interface Taped {
  readonly what: 'wall' | 'turn' | 'diagonal';
  readonly index: number;
}

interface Fitted {
  /** mm or degrees, as the adjusted corners make it */
  readonly value: number;
  /** What the adjustment changes; null: it was not taped. */
  readonly change: number | null;
}

/** A measurement that fits badly. */
export interface Misfit {
  readonly of: Taped;
  readonly typed: number;
  /** What all the others make it. */
  readonly others: number;
  /** How often its own deviation it is off. */
  readonly times: number;
  /** Those that would look the same if they were wrong instead. */
  readonly orElse: readonly Taped[];
}

export interface SurveyFit {
  /** The first at the origin, the first wall along +x. mm */
  readonly corners: readonly Point[];
  readonly walls: readonly Fitted[];
  readonly turns: readonly Fitted[];
  readonly diagonals: readonly Fitted[];
  /** Measurements more than it takes. */
  readonly redundancy: number;
  /** Corners (index) whose place the tape does not tell. */
  readonly loose: readonly number[];
  readonly misfit: Misfit | null;
}

/** mm, and mm a mm: what two people and a tape are good for (class rule). */
const TAPE = { least: 3, share: 0.0005 } as const;
/** Degrees that a corner called square, or an angle typed, is off by (class rule). */
const TURN = 0.5;
/** Baarda's critical value for one measurement in a thousand (W. Baarda, A Testing Procedure for Use in Geodetic Networks, 1968; from memory). */
const CRITICAL = 3.29;
/** Dense matrices: rooms have a dozen walls. */
export const MOST_WALLS = 60;

const tapeSigma = (length: number): number => TAPE.least + TAPE.share * length;

/**
 * Corners by least squares from everything that was taped: lengths, turns and diagonals. Null: fewer than three walls or more
 * than can be worked out at once.
 */
export function fitSurvey(walls: readonly TapedWall[], diagonals: readonly TapedDiagonal[]): SurveyFit | null {
  if (walls.length < 3 || walls.length > MOST_WALLS) return null;
  const taped = tapedOf(walls, diagonals);
  const adjusted = bestOf(walls, taped, starts(walls, diagonals));
  const { points, residuals } = adjusted;
  const count = walls.length;
  const changeOf = (what: Taped['what'], index: number): number | null => {
    const row = taped.findIndex(({ of }) => of.what === what && of.index === index);
    return residuals[row]?.change ?? null;
  };
  const corner = (i: number): Point => points[i % count] as Point;
  return {
    corners: points,
    walls: walls.map((_, i) => ({ value: distance(corner(i), corner(i + 1)), change: changeOf('wall', i) })),
    turns: walls.map((_, i) => ({ value: turnAt(corner(i), corner(i + 1), corner(i + 2)), change: changeOf('turn', i) })),
    diagonals: diagonals.map(({ from, to }, i) => ({ value: distance(corner(from), corner(to)), change: changeOf('diagonal', i) })),
    redundancy: adjusted.redundancy,
    loose: adjusted.loose,
    misfit: adjusted.loose.length > 0 ? null : worstOf(walls, taped, adjusted),
  };
}

interface TapedObservation {
  readonly of: Taped;
  readonly observation: Observation;
}

function tapedOf(walls: readonly TapedWall[], diagonals: readonly TapedDiagonal[]): TapedObservation[] {
  const count = walls.length;
  const lengths = walls.flatMap(({ length }, index): TapedObservation[] => {
    if (length === null) return [];
    const observation = { kind: 'distance', from: index, to: (index + 1) % count, value: length, sigma: tapeSigma(length) } as const;
    return [{ of: { what: 'wall', index }, observation }];
  });
  const turns = walls.flatMap(({ turn, isTurnFree }, index): TapedObservation[] => {
    if (isTurnFree) return [];
    const [at, to] = [(index + 1) % count, (index + 2) % count];
    return [{ of: { what: 'turn', index }, observation: { kind: 'turn', from: index, at, to, value: turn, sigma: TURN } }];
  });
  const across = diagonals.map(({ from, to, length }, index): TapedObservation => {
    return {
      of: { what: 'diagonal', index },
      observation: { kind: 'distance', from, to, value: length, sigma: tapeSigma(length) },
    };
  });
  return [...lengths, ...turns, ...across];
}

/** Degrees clockwise from a-b to b-c, from -180 to 180. */
function turnAt(a: Point, b: Point, c: Point): number {
  const into = Math.atan2(b.y - a.y, b.x - a.x);
  const out = Math.atan2(c.y - b.y, c.x - b.x);
  const degrees = ((out - into) * 180) / Math.PI;
  return degrees - 360 * Math.round(degrees / 360);
}

/** The drawing is held by its first corner and the direction of its first wall. */
const heldOf = (count: number) => Array.from({ length: count }, (_, i) => ({ x: i === 0, y: i <= 1 }));

/** Free angles may settle on a mirror image: from several beginnings the one that fits best and bends as was said. */
function bestOf(walls: readonly TapedWall[], taped: readonly TapedObservation[], from: readonly (readonly Point[])[]): Adjusted {
  const observations = taped.map(({ observation }) => observation);
  const found = from.map((start) => adjustNetwork(start, heldOf(walls.length), observations));
  const bends = ({ points }: Adjusted): number =>
    walls.filter(({ turn, isTurnFree }, i) => {
      const corner = (k: number): Point => points[(i + k) % walls.length] as Point;
      return isTurnFree && turnAt(corner(0), corner(1), corner(2)) * turn < 0;
    }).length;
  const better = (p: Adjusted, q: Adjusted): Adjusted => {
    if (Math.abs(p.misfit - q.misfit) > 0.01) return p.misfit < q.misfit ? p : q;
    return bends(p) <= bends(q) ? p : q;
  };
  return found.reduce(better);
}

/** Where the search begins: the walk with its free angles guessed. */
function starts(walls: readonly TapedWall[], diagonals: readonly TapedDiagonal[]): Point[][] {
  const known = walls.flatMap(({ length }) => length ?? []);
  const usual = known.reduce((sum, length) => sum + length, 0) / Math.max(1, known.length) || 1000;
  const free = walls.flatMap((wall, i) => (wall.isTurnFree ? [i] : []));
  const walk = (guess: (i: number, turn: number) => number): Point[] => {
    const { adjusted } = traverse(
      walls.map(({ length, turn, isTurnFree }, i) => ({ length: length ?? usual, turn: isTurnFree ? guess(i, turn) : turn })),
    );
    // The spread turned the first wall a little: here it runs along +x.
    return adjusted.map((corner, i) => (i === 1 ? { x: corner.x, y: 0 } : corner));
  };
  if (free.length === 0) return [walk((_, turn) => turn)];
  const side = (turn: number): number => (turn < 0 ? -1 : 1);
  const rest = 360 - walls.reduce((sum, wall) => sum + (wall.isTurnFree ? 0 : wall.turn), 0);
  const byTriangle = (i: number, turn: number): number => side(turn) * (triangleTurn(walls, diagonals, i) ?? 90);
  return [
    walk(byTriangle),
    walk((_, turn) => turn),
    walk(() => rest / free.length),
    ...[30, 60, 120, 150].map((bend) => walk((i, turn) => side(turn) * (triangleTurn(walls, diagonals, i) ?? bend))),
  ];
}

/** The turn after wall i where its two walls and a diagonal across them were taped: a triangle by its three sides. */
function triangleTurn(walls: readonly TapedWall[], diagonals: readonly TapedDiagonal[], i: number): number | null {
  const [a, b] = [walls[i]?.length, walls[(i + 1) % walls.length]?.length];
  const ends = [i, (i + 2) % walls.length];
  const across = diagonals.find(({ from, to }) => ends.includes(from) && ends.includes(to) && from !== to);
  if (!a || !b || !across) return null;
  const cosine = (a * a + b * b - across.length ** 2) / (2 * a * b);
  return 180 - (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
}

/** The measurement that is farthest off for what it is good for, and what the rest makes of it. */
function worstOf(walls: readonly TapedWall[], taped: readonly TapedObservation[], { points, residuals, alike }: Adjusted): Misfit | null {
  let worst = -1;
  residuals.forEach(({ standardised }, i) => {
    if (Math.abs(standardised ?? 0) > Math.abs(residuals[worst]?.standardised ?? 0)) worst = i;
  });
  const times = Math.abs(residuals[worst]?.standardised ?? 0);
  const found = taped[worst];
  if (!found || times <= CRITICAL) return null;
  const others = taped.filter((_, i) => i !== worst).map(({ observation }) => observation);
  const without = adjustNetwork(points, heldOf(walls.length), others).points;
  const corner = (i: number): Point => without[i] as Point;
  const { observation } = found;
  const made =
    observation.kind === 'distance'
      ? distance(corner(observation.from), corner(observation.to))
      : turnAt(corner(observation.from), corner(observation.at), corner(observation.to));
  return {
    of: found.of,
    typed: observation.value,
    others: made,
    times,
    orElse: alike(worst).flatMap((i) => taped[i]?.of ?? []),
  };
}

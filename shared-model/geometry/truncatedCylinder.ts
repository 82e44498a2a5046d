/** An upright cylinder, open above, with a slanted plane floor. mm. */
export interface TruncatedCylinder {
  readonly across: number;
  /** depth at the two ends of the slope */
  readonly shallow: number;
  readonly deep: number;
}
type Point3 = readonly [x: number, y: number, z: number];
/** Degrees: turned about x, then y, then z. */
type Turn = readonly [roll: number, pitch: number, yaw: number];

/** Degrees between the turns tried first, and between the last ones tried. */
const FIRST_STEP = 15;
const LAST_STEP = 0.02;
/** So many of the best first turns are followed. */
const FOLLOWED = 12;
/** mm: a body that touches still fits. */
const NOISE = 1e-6;

/** The longest straight line inside: mm. */
export const longestIn = ({ across, deep }: TruncatedCylinder): number => Math.hypot(across, deep);

/** Corners of a box about the origin. */
export function boxPoints([a, b, c]: Point3): Point3[] {
  const signs = [-1, 1];
  return signs.flatMap((i) => signs.flatMap((j) => signs.map((k): Point3 => [(i * a) / 2, (j * b) / 2, (k * c) / 2])));
}

/** Points of the ellipsoid inside that box, evenly spread, in pairs about the origin: its hull lies a little inside. */
export function roundPoints([a, b, c]: Point3, pairs = 32): Point3[] {
  const golden = Math.PI * (3 - Math.sqrt(5));
  return Array.from({ length: pairs }, (_, i): Point3 => {
    const z = (i + 0.5) / pairs;
    const around = Math.sqrt(1 - z * z);
    return [(a / 2) * around * Math.cos(golden * i), (b / 2) * around * Math.sin(golden * i), (c / 2) * z];
  }).flatMap(([x, y, z]): Point3[] => [
    [x, y, z],
    [-x, -y, -z],
  ]);
}

/**
 * Whether the hull of points (each with its opposite about the origin) fits wholly inside in some position. Yes is
 * proved by the position found; no means that none was found among 3744 turns and the neighbourhoods of the best of
 * them down to 0.02 degrees.
 */
export function fitsInside(points: readonly Point3[], cylinder: TruncatedCylinder): boolean {
  const first: { turn: Turn; slack: number }[] = [];
  for (let roll = 0; roll < 180; roll += FIRST_STEP)
    for (let pitch = -90; pitch <= 90; pitch += FIRST_STEP)
      for (let yaw = 0; yaw < 360; yaw += FIRST_STEP) {
        const turn: Turn = [roll, pitch, yaw];
        const slack = slackOf(points, turn, cylinder);
        if (slack >= -NOISE) return true;
        first.push({ turn, slack });
      }
  first.sort((p, q) => q.slack - p.slack);
  return first.slice(0, FOLLOWED).some(({ turn, slack }) => climb(points, turn, slack, cylinder) >= -NOISE);
}

/** Turns a little at a time as long as it helps; stops once the body fits. */
function climb(points: readonly Point3[], from: Turn, slack: number, cylinder: TruncatedCylinder): number {
  let best = slack;
  let turn = from;
  for (let step = FIRST_STEP / 2; step > LAST_STEP && best < -NOISE; ) {
    let isBetter = false;
    for (const [axis, by] of moves) {
      const next: Turn = [
        turn[0] + (axis === 0 ? by * step : 0),
        turn[1] + (axis === 1 ? by * step : 0),
        turn[2] + (axis === 2 ? by * step : 0),
      ];
      const nextSlack = slackOf(points, next, cylinder);
      if (nextSlack <= best) continue;
      best = nextSlack;
      turn = next;
      isBetter = true;
    }
    if (!isBetter) step /= 2;
  }
  return best;
}
const moves = [0, 1, 2].flatMap((axis) => [1, -1].map((by) => [axis, by] as const));

/**
 * mm of play along the slope that a body turned like this has, its top level with the rim; below zero: it does not fit
 * like this, by so much (a measure to climb by, not a distance).
 */
function slackOf(points: readonly Point3[], turn: Turn, { across, shallow, deep }: TruncatedCylinder): number {
  const radius = across / 2;
  const slope = (deep - shallow) / across;
  const turned = points.map((p) => turnPoint(p, turn));
  let top = 0;
  let down = 0;
  let out = 0;
  let widest = 0;
  for (const [x, y, z] of turned) {
    top = Math.max(top, z);
    down = Math.max(down, z + slope * x);
    out = Math.max(out, Math.hypot(x, y));
    widest = Math.max(widest, y);
  }
  // The floor lies (shallow + deep) / 2 + slope x below the rim: so far the middle has to go to the deep end at least.
  const wanted = (top + down - (shallow + deep) / 2) / slope;
  if (out > radius) return Math.min(0, -wanted) - 3 * (out - radius);
  return farthestX(turned, radius, radius - widest) - wanted;
}

/** How far along x the middle can go with every point inside the circle; concave in y, so narrowed down by thirds. */
function farthestX(points: readonly Point3[], radius: number, play: number): number {
  const at = (middleY: number): number => {
    let least = Infinity;
    for (const [x, y] of points) least = Math.min(least, Math.sqrt(Math.max(0, radius * radius - (middleY + y) ** 2)) - x);
    return least;
  };
  let low = -play;
  let high = play;
  for (let i = 0; i < 40 && high - low > 1e-7; i++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (at(a) < at(b)) low = a;
    else high = b;
  }
  return at((low + high) / 2);
}

function turnPoint([x, y, z]: Point3, [roll, pitch, yaw]: Turn): Point3 {
  const [cr, sr] = circle(roll);
  const [cp, sp] = circle(pitch);
  const [cy, sy] = circle(yaw);
  const y1 = cr * y - sr * z;
  const z1 = sr * y + cr * z;
  const x2 = cp * x + sp * z1;
  const z2 = -sp * x + cp * z1;
  return [cy * x2 - sy * y1, sy * x2 + cy * y1, z2];
}

const circle = (degrees: number): [number, number] => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];

import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { plainRoom } from './plainRoom.ts';

type PieceInput = NonNullable<ClassroomInput['arrangements'][number]['pieces']>[number];
type RoomInput = ClassroomInput['room'];
type OpeningInput = NonNullable<RoomInput['openings']>[number];

const swings = ['in-left', 'in-right', 'out-left', 'out-right', 'sliding', 'none'] as const;

/**
 * A room for tests of the ways, the same for a seed: rectangular, L-shaped or slanted, one to three doors, pieces
 * straight and turned, concave, round, touching, overlapping, standing in doors and through walls.
 */
export function randomWayRoom(seed: number) {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const chance = (share: number): boolean => random() < share;
  const pick = <T>(list: readonly T[]): T => list[whole(0, list.length - 1)] as T;

  const w = whole(45, 75) * 100;
  const h = whole(40, 60) * 100;
  const outline = pick([rectangle, rectangle, ell, slanted])(w, h, between);
  const corners = outline.map(([x, y], i) => ({ id: `c${i + 1}`, x, y }));
  const openings: OpeningInput[] = [];
  const doorCount = whole(1, 3);
  for (let i = 0; i < doorCount; i++) {
    const at = whole(0, corners.length - 1);
    const a = outline[at] as readonly [number, number];
    const b = outline[(at + 1) % outline.length] as readonly [number, number];
    const wall = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const width = whole(70, 140) * 10;
    if (wall < width + 200 || openings.some((o) => o.from === `c${at + 1}`)) continue;
    openings.push({
      id: `d${i + 1}`,
      kind: chance(0.8) ? 'door' : 'passage',
      from: `c${at + 1}`,
      offset: Math.round(between(0, wall - width)),
      width,
      clear: chance(0.7) ? width - whole(0, 10) * 10 : null,
      swing: pick(swings),
    });
  }
  if (openings.length === 0) openings.push({ id: 'd1', kind: 'door', from: 'c1', offset: 300, width: 900, clear: 850, swing: 'none' });

  const pieces: PieceInput[] = [];
  const count = whole(3, 9);
  for (let i = 0; i < count; i++) {
    const isShelf = chance(0.5);
    const piece: PieceInput = {
      id: `p${i + 1}`,
      kind: isShelf ? 'shelf' : chance(0.4) ? 'table' : 'other',
      x: Math.round(between(150, w - 150)),
      y: Math.round(between(150, h - 150)),
      rotation: chance(0.6) ? whole(0, 3) * 90 : whole(0, 359) + (chance(0.5) ? 0 : random()),
      width: whole(60, 180) * 10,
      depth: isShelf ? whole(28, 45) * 10 : whole(30, 100) * 10,
      sides: chance(0.3) ? ['front', 'back'] : ['front'],
    };
    if (piece.kind === 'table' && chance(0.6)) piece.seatSides = chance(0.5) ? { front: 2 } : { front: 1, left: 1 };
    if (piece.kind === 'other' && chance(0.4)) piece.round = true;
    if (!isShelf && piece.kind === 'other' && !piece.round && chance(0.6)) piece.outline = hook(piece.width, piece.depth, random);
    const before = pieces.at(-1);
    if (before && chance(0.25)) {
      // Side by side with the one before: touching, or lapping a little.
      const turn = ((before.rotation ?? 0) * Math.PI) / 180;
      const step = (before.width + piece.width) / 2 - (chance(0.5) ? 0 : whole(0, 60));
      piece.rotation = before.rotation ?? 0;
      piece.x = before.x + step * Math.cos(turn);
      piece.y = before.y + step * Math.sin(turn);
    }
    if (chance(0.12)) {
      // Into a doorway or near it.
      const door = pick(openings);
      const at = corners.findIndex((c) => c.id === door.from);
      const a = outline[at] as readonly [number, number];
      const b = outline[(at + 1) % outline.length] as readonly [number, number];
      const wall = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const share = (door.offset + between(0, door.width)) / wall;
      piece.x = Math.round(a[0] + (b[0] - a[0]) * share + between(-500, 500));
      piece.y = Math.round(a[1] + (b[1] - a[1]) * share + between(-500, 500));
    }
    pieces.push(piece);
  }
  return plainRoom({ room: { corners, openings }, pieces });
}

type Corners = (readonly [number, number])[];
type Between = (low: number, high: number) => number;

const rectangle = (w: number, h: number): Corners => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];

function ell(w: number, h: number, between: Between): Corners {
  const x = Math.round(between(0.4, 0.7) * w);
  const y = Math.round(between(0.4, 0.7) * h);
  return [
    [0, 0],
    [w, 0],
    [w, y],
    [x, y],
    [x, h],
    [0, h],
  ];
}

function slanted(w: number, h: number, between: Between): Corners {
  const cut = Math.round(between(300, 1500));
  return [
    [cut, 0],
    [w, Math.round(between(0, 600))],
    [w, h],
    [w - cut, h + 400],
    [0, h],
    [0, cut],
  ];
}

/** A concave outline within a box: a hook, or a trough. */
function hook(width: number, depth: number, random: () => number): [number, number][] {
  const w = width / 2;
  const d = depth / 2;
  const arm = (0.2 + 0.3 * random()) * depth;
  const leg = (0.2 + 0.2 * random()) * width;
  if (random() < 0.5)
    return [
      [-w, -d],
      [w, -d],
      [w, -d + arm],
      [-w + leg, -d + arm],
      [-w + leg, d],
      [-w, d],
    ];
  return [
    [-w, -d],
    [w, -d],
    [w, d],
    [w - leg, d],
    [w - leg, -d + arm],
    [-w + leg, -d + arm],
    [-w + leg, d],
    [-w, d],
  ];
}

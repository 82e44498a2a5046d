import { seededRandom } from '#model/geometry/seededRandom.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { randomWayRoom } from './randomWayRoom.ts';

type FixtureInput = NonNullable<ClassroomInput['room']['fixtures']>[number];
type PieceInput = NonNullable<ClassroomInput['arrangements'][number]['pieces']>[number];

interface Shell {
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  /** mm, inside its walls */
  readonly width: number;
  readonly depth: number;
  readonly wall: number;
  /** Opening in the wall towards local +y: its middle along x, and its width; nearly shut at times, shut at others. */
  readonly gapAt: number;
  readonly gap: number;
}

/** A random room in which a smaller one stands, of walls that meet or of one that runs round; at times another in that. */
export function roomInRoom(seed: number): Classroom {
  const random = seededRandom(seed * 7919 + 13);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const room = randomWayRoom(seed);
  const xs = room.room.corners.map((c) => c.x);
  const ys = room.room.corners.map((c) => c.y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const width = Math.round(between(1600, 3400));
  const outer: Shell = {
    x: Math.round(between(left + 1000, right - 1000)),
    y: Math.round(between(top + 1000, bottom - 1000)),
    rotation: random() < 0.5 ? 90 * Math.floor(between(0, 4)) : between(0, 360),
    width,
    depth: Math.round(between(1400, 2800)),
    wall: Math.round(between(40, 160)),
    gapAt: between(-0.25, 0.25) * width,
    gap: random() < 0.1 ? 0 : Math.round(between(300, 1300)),
  };
  const shells = [outer];
  if (random() < 0.3)
    shells.push({ ...outer, rotation: outer.rotation + between(-8, 8), width: width * 0.55, depth: outer.depth * 0.5, gapAt: 0, gap: 450 });
  const fixtures = shells.flatMap((shell, i) => (random() < 0.5 ? bars(shell, `r${i + 1}`) : [ring(shell, `r${i + 1}`)]));
  const shelf: PieceInput = {
    id: 'within',
    kind: 'shelf',
    ...at(outer, between(-200, 200), 150 - outer.depth / 2),
    rotation: outer.rotation,
    width: 700,
    depth: 300,
  };
  const [arrangement] = room.arrangements;
  const read = readClassroom({
    ...room,
    room: { ...room.room, fixtures },
    arrangements: [{ ...arrangement, pieces: [...(arrangement?.pieces ?? []), shelf] }],
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.classroom;
}

/** A place of the shell's own axes on the plan. */
function at({ x, y, rotation }: Shell, u: number, v: number): { x: number; y: number } {
  const t = (rotation * Math.PI) / 180;
  return { x: x + u * Math.cos(t) - v * Math.sin(t), y: y + u * Math.sin(t) + v * Math.cos(t) };
}

/** Four walls that meet corner to edge, the one with the opening in two parts. */
function bars(shell: Shell, id: string): FixtureInput[] {
  const { width, depth, wall, gap, gapAt, rotation } = shell;
  const w = width / 2 + wall;
  const boxes = [
    [-w, -depth / 2 - wall, w, -depth / 2],
    [-w, -depth / 2, -width / 2, depth / 2],
    [width / 2, -depth / 2, w, depth / 2],
    [-w, depth / 2, gapAt - gap / 2, depth / 2 + wall],
    [gapAt + gap / 2, depth / 2, w, depth / 2 + wall],
  ] as const;
  return boxes.flatMap(([x1, y1, x2, y2], i) =>
    x2 - x1 < 1
      ? []
      : [{ id: `${id}-${i}`, kind: 'partition', ...at(shell, (x1 + x2) / 2, (y1 + y2) / 2), width: x2 - x1, depth: y2 - y1, rotation }],
  );
}

/** One wall all round, slit at the opening: a concave outline. Shut, it is a block with a thin slit left. */
function ring(shell: Shell, id: string): FixtureInput {
  const { width, depth, wall, gapAt, rotation, x, y } = shell;
  const gap = Math.max(shell.gap, 1);
  const [w, d] = [width / 2, depth / 2];
  const [from, to] = [Math.max(gapAt - gap / 2, -w + 1), Math.min(gapAt + gap / 2, w - 1)];
  const outline: [number, number][] = [
    [-w - wall, -d - wall],
    [w + wall, -d - wall],
    [w + wall, d + wall],
    [to, d + wall],
    [to, d],
    [w, d],
    [w, -d],
    [-w, -d],
    [-w, d],
    [from, d],
    [from, d + wall],
    [-w - wall, d + wall],
  ];
  return { id, kind: 'partition', x, y, rotation, width: width + 2 * wall, depth: depth + 2 * wall, outline };
}

import { expect, it } from 'vitest';
import { inHandOrder, orderTroubles } from '#model/analysis/moveDay/handOrder.ts';
import { type MovePlan, type MoveStep, planMove } from '#model/analysis/moveDay/plan.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { Classroom } from '#model/schema/types.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';
import { patience, runs } from '#tests/support/runs.ts';

// Small random rooms, our own: no source. Every piece is a rectangle square to the walls, so that who stands where can be
// played through with plain boxes, which know nothing of the geometry that made the order.
const ROOM = { width: 5200, depth: 4200 };
/** The door of the plain room: 400 to 1300 mm in the north wall, 1200 mm before it kept free. */
const EXIT = { minX: 400, maxX: 1300, minY: 0, maxY: 1200 };

interface Box {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}
type Place = Pick<MovePiece, 'x' | 'y' | 'width' | 'depth'> & { readonly rotation?: number | undefined };

function boxOf({ x, y, width, depth, rotation = 0 }: Place): Box {
  const isAcross = Math.round(rotation / 90) % 2 !== 0;
  const [w, d] = isAcross ? [depth / 2, width / 2] : [width / 2, depth / 2];
  return { minX: x - w, maxX: x + w, minY: y - d, maxY: y + d };
}
/** mm that two boxes overlap; touching is none. */
const overlap = (p: Box, q: Box): number =>
  Math.min(Math.min(p.maxX, q.maxX) - Math.max(p.minX, q.minX), Math.min(p.maxY, q.maxY) - Math.max(p.minY, q.minY));
const isIn = ({ minX, maxX, minY, maxY }: Box): boolean => minX >= -1 && minY >= -1 && maxX <= ROOM.width + 1 && maxY <= ROOM.depth + 1;

function randomMove(seed: number): Classroom {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => Math.round(low + random() * (high - low));
  const count = between(2, 7);
  const alike = random() < 0.5;
  const sizes = Array.from({ length: count }, () =>
    alike ? { width: 1000, depth: 400 } : { width: between(50, 140) * 10, depth: between(30, 60) * 10 },
  );
  const free = (taken: readonly Place[], size: { width: number; depth: number }): Place | null => {
    for (let tries = 0; tries < 200; tries++) {
      const place = { x: between(20, 500) * 10, y: between(20, 400) * 10, rotation: random() < 0.5 ? 0 : 90, ...size };
      const box = boxOf(place);
      if (isIn(box) && taken.every((other) => overlap(box, boxOf(other)) <= 0)) return place;
    }
    return null;
  };
  const before: Place[] = [];
  for (const size of sizes) {
    const place = free(before, size);
    if (place) before.push(place);
  }
  // Some change places in a ring, some go elsewhere, some stay, one may be put away.
  const places = before.map((place) => ({ ...place }));
  const isRing = alike && random() < 0.8;
  const after = isRing ? [...places.slice(1), places[0] as Place] : places.map((place) => place);
  for (let i = 0; i < after.length; i++) {
    if (random() < (isRing ? 0.85 : 0.5)) continue;
    const others = after.filter((_, j) => j !== i);
    after[i] = free(others, sizes[i] as (typeof sizes)[number]) ?? (after[i] as Place);
  }
  const isClear = after.every((place, i) => after.every((other, j) => i === j || overlap(boxOf(place), boxOf(other)) <= 0));
  const settled = isClear ? after : places;
  const gone = random() < 0.2 ? 0 : -1;
  const piece = (place: Place, i: number): MovePiece => ({
    ...place,
    id: `p${i}`,
    kind: 'shelf',
    height: 700,
    levels: [{ id: 'l1', surface: 640 }],
  });
  return moveRoom(
    before.map(piece),
    settled.map(piece).filter((_, i) => i !== gone),
    {
      room: {
        corners: [
          { id: 'c1', x: 0, y: 0 },
          { id: 'c2', x: ROOM.width, y: 0 },
          { id: 'c3', x: ROOM.width, y: ROOM.depth },
          { id: 'c4', x: 0, y: ROOM.depth },
        ],
      },
      materials: before.map((_, i) => ({ id: `m${i}`, name: `thing ${i}`, width: 200, depth: 200, mass: 3 })),
      placed: [
        before.map((_, i) => ({ material: `m${i}`, piece: `p${i}`, level: 'l1', x: 0 })),
        before.flatMap((_, i) => (i === gone ? [] : [{ material: `m${i}`, piece: `p${i}`, level: 'l1', x: 0 }])),
      ],
    },
  );
}

/** Plays steps through with boxes: pieces that are run into at each. */
function play(plan: MovePlan, steps: readonly MoveStep[]): { step: MoveStep; hits: string[] }[] {
  const now = new Map(plan.from.arrangement.pieces.map((piece) => [piece.id, boxOf(piece)]));
  const log: { step: MoveStep; hits: string[] }[] = [];
  for (const step of steps) {
    const [id] = step.pieces;
    if (step.unit === null || id === undefined) continue;
    if (step.does === 'out' || !step.stands?.piece) {
      now.delete(id);
      log.push({ step, hits: [] });
      continue;
    }
    const box = boxOf(step.stands.piece);
    const others = [...now].filter(([other]) => other !== id);
    log.push({ step, hits: others.filter(([, there]) => overlap(box, there) > 1).map(([other]) => other) });
    if (step.path?.how === 'slide')
      expect(
        slideHits(
          now.get(id) as Box,
          step.path.legs,
          others.map(([, there]) => there),
        ),
      ).toBe(false);
    now.set(id, box);
  }
  return log;
}

function slideHits(start: Box, legs: readonly { x: number; y: number }[], others: readonly Box[]): boolean {
  let at = start;
  for (const leg of legs) {
    for (let share = 0; share <= 1; share += 0.01) {
      const moved = {
        minX: at.minX + leg.x * share,
        maxX: at.maxX + leg.x * share,
        minY: at.minY + leg.y * share,
        maxY: at.maxY + leg.y * share,
      };
      if (!isIn(moved) || others.some((other) => overlap(moved, other) > 1.01)) return true;
    }
    at = { minX: at.minX + leg.x, maxX: at.maxX + leg.x, minY: at.minY + leg.y, maxY: at.maxY + leg.y };
  }
  return false;
}

/** The fewest pieces to set aside, by trying out all subsets: without them an order is found by taking whatever is free. */
function fewestAside({ from, to }: MovePlan): number {
  const moving = from.arrangement.pieces.flatMap((piece) => {
    const after = to.arrangement.pieces.find(({ id }) => id === piece.id);
    if (!after) return [];
    const isSame = after.x === piece.x && after.y === piece.y && after.rotation === piece.rotation;
    return isSame ? [] : [{ from: boxOf(piece), to: boxOf(after) }];
  });
  for (let size = 0; ; size++)
    for (let bits = 0; bits < 1 << moving.length; bits++) {
      const chosen = moving.filter((_, i) => bits & (1 << i));
      if (chosen.length !== size) continue;
      let rest = moving.filter((_, i) => !(bits & (1 << i)));
      for (let isOn = true; isOn && rest.length > 0; ) {
        const next = rest.find((one) => rest.every((other) => other === one || overlap(one.to, other.from) <= 1));
        isOn = next !== undefined;
        rest = rest.filter((one) => one !== next);
      }
      if (rest.length === 0) return size;
    }
}

it(
  'no step of the order runs into anything; what is set aside is as little as can be, inside the room and before no exit',
  () => {
    let circles = 0;
    let slides = 0;
    for (let seed = 1; seed <= runs(150, 10_000); seed++) {
      const plan = planMove(randomMove(seed), 'a1', 'a2');
      const { steps, sequence } = plan;
      for (const { step, hits } of play(plan, steps)) expect(hits, `seed ${seed}, ${step.id}`).toEqual([]);
      expect(sequence.isLeast, `seed ${seed}`).toBe(true);
      expect(sequence.aside.length, `seed ${seed}`).toBe(fewestAside(plan));
      for (const step of steps.filter(({ does }) => does === 'aside')) {
        const box = step.stands?.piece && boxOf(step.stands.piece);
        if (box) expect(isIn(box) && overlap(box, EXIT) <= 1, `seed ${seed}, ${step.id}`).toBe(true);
      }
      // Everything is where it belongs in the end, and nothing waits for what comes later.
      const done = new Set<string>();
      for (const step of steps) {
        expect(
          step.waits.filter((wait) => !done.has(wait.step)),
          `seed ${seed}, ${step.id}`,
        ).toEqual([]);
        done.add(step.id);
      }
      for (const piece of plan.to.arrangement.pieces) {
        const last = steps.findLast((step) => step.unit !== null && step.pieces.includes(piece.id));
        if (last) expect(last.stands?.piece).toMatchObject({ x: piece.x, y: piece.y, rotation: piece.rotation });
      }
      if (sequence.aside.length > 0) circles += 1;
      slides += steps.filter(({ path }) => path?.how === 'slide').length;
    }
    expect(circles).toBeGreaterThan(20);
    expect(slides).toBeGreaterThan(50);
  },
  patience,
);

it(
  'an order made by hand: told as it is when played through; any that keeps what steps wait for works',
  () => {
    for (let seed = 1; seed <= runs(100, 5_000); seed++) {
      const plan = planMove(randomMove(seed), 'a1', 'a2');
      const random = seededRandom(seed + 7);
      const shuffled = inHandOrder(
        plan.steps,
        plan.steps.map(({ id }) => id).sort(() => random() - 0.5),
      );
      expect(shuffled.length).toBe(plan.steps.length);
      const troubles = orderTroubles(plan, shuffled);
      const moves = shuffled.filter(({ unit, does }) => unit !== null && does !== 'out');
      const now = new Map(plan.from.arrangement.pieces.map((piece) => [piece.id, boxOf(piece)]));
      for (const step of shuffled) {
        const [id] = step.pieces;
        if (step.unit === null || id === undefined) continue;
        const box = step.does !== 'out' && step.stands?.piece ? boxOf(step.stands.piece) : null;
        const hits = box ? [...now].filter(([other, there]) => other !== id && overlap(box, there) > 1).map(([other]) => other) : [];
        if (moves.includes(step))
          expect([...(troubles.get(step.id)?.inTheWay ?? [])].sort(), `seed ${seed}, ${step.id}`).toEqual(hits.sort());
        if (box) now.set(id, box);
        else now.delete(id);
      }
      if (plan.sequence.aside.length > 0) continue;
      // Another order that keeps what waits for what.
      const rest = [...plan.steps];
      const kept: MoveStep[] = [];
      while (rest.length > 0) {
        const ready = rest.filter(({ after }) => after.every((wait) => kept.some(({ id }) => id === wait)));
        const next = ready[Math.floor(random() * ready.length)] as MoveStep;
        kept.push(next);
        rest.splice(rest.indexOf(next), 1);
      }
      expect([...orderTroubles(plan, kept)], `seed ${seed}`).toEqual([]);
    }
  },
  patience,
);

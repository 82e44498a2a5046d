import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersOf, reachAlong } from '#client/plan/box.ts';
import {
  averageGap,
  boxRound,
  evenly,
  inARow,
  keptTogether,
  mirrored,
  type SetBox,
  shifted,
  turnedAbout,
} from '#client/plan/set/arrange.ts';
import { buildRoom } from '#model/scene/room.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const box = (id: string, x: number, y: number, width: number, depth = 320, rotation = 0): SetBox => ({ id, x, y, width, depth, rotation });
const { outline, walls } = buildRoom(plainRoom({}).room);
const room = { outline, walls };
const byId = (boxes: readonly SetBox[]) => new Map(boxes.map((b) => [b.id, b]));
const seeded = { seed: 20261127, numRuns: 500 };
const anyBox = fc.record({
  x: fc.integer({ min: 0, max: 6000 }),
  y: fc.integer({ min: 0, max: 5000 }),
  width: fc.integer({ min: 200, max: 2000 }),
  depth: fc.integer({ min: 200, max: 900 }),
  rotation: fc.integer({ min: 0, max: 359 }),
});

describe('a row', () => {
  it('puts ends flush and backs in the line of the first, which stays', () => {
    const row = byId(inARow([box('b', 2000, 1000, 1000, 400), box('c', 3600, 1300, 800, 300), box('a', 700, 700, 600, 500, 90)]));
    expect(row.get('b')).toMatchObject({ x: 2000, y: 1000 });
    expect(row.get('c')).toMatchObject({ x: 2900, y: 950, rotation: 0 });
    expect(row.get('a')).toMatchObject({ x: 1200, y: 1050, rotation: 0 });
  });

  it('leaves a gap from each to the next when one is asked for', () => {
    const row = byId(inARow([box('b', 2000, 1000, 1000), box('c', 3600, 1300, 800), box('a', 700, 700, 600)], 350));
    expect([row.get('a')?.x, row.get('b')?.x, row.get('c')?.x]).toEqual([850, 2000, 3250]);
  });

  it('knows the gap that its things have on average, and none where they touch or overlap', () => {
    expect(averageGap([box('a', 500, 160, 600), box('b', 1500, 160, 800), box('c', 2800, 160, 1000)])).toBe(350);
    expect(averageGap([box('a', 500, 160, 600), box('b', 1200, 160, 800)])).toBe(null);
    expect(averageGap([box('a', 500, 160, 600), box('b', 900, 160, 800)])).toBe(null);
  });

  it('keeps the order along the line, whatever the line’s direction', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { minLength: 2, maxLength: 8 }), (raw) => {
        const boxes = raw.map((b, i): SetBox => ({ ...b, id: `${i}` }));
        const row = inARow(boxes);
        const first = boxes[0] as SetBox;
        const radians = (first.rotation * Math.PI) / 180;
        const along = (b: SetBox) => b.x * Math.cos(radians) + b.y * Math.sin(radians);
        const back = (b: SetBox) => -b.x * Math.sin(radians) + b.y * Math.cos(radians) - b.depth / 2;
        const ordered = [...row].sort((p, q) => along(p) - along(q));
        for (const [i, b] of ordered.slice(1).entries()) {
          const before = ordered[i] as SetBox;
          expect(along(b) - along(before)).toBeCloseTo((b.width + before.width) / 2, 6);
          expect(back(b)).toBeCloseTo(back(first), 6);
        }
      }),
      seeded,
    );
  });
});

describe('evenly', () => {
  it('gives each the same gap and leaves the outermost where they are', () => {
    const spaced = evenly([box('a', 500, 160, 600), box('c', 4400, 160, 1000), box('b', 1400, 200, 800)]);
    if (!spaced.isDone) throw new Error('there is room');
    const now = byId(spaced.boxes);
    // From 0.20 to 4.90 m, 2.40 m of it taken: two gaps of 1.15.
    expect(spaced.gap).toBeCloseTo(1150, 6);
    expect([now.get('a')?.x, now.get('b')?.x, now.get('c')?.x]).toEqual([500, 2350, 4400]);
    expect(now.get('b')?.y).toBe(200);
  });

  it('spaces a column across the line of the first', () => {
    const spaced = evenly([box('a', 1000, 500, 600), box('b', 1000, 900, 600), box('c', 1000, 2500, 600)]);
    expect(spaced.isDone && spaced.boxes.map(({ y }) => y)).toEqual([500, 1500, 2500]);
  });

  it('says by how much they are too long', () => {
    expect(evenly([box('a', 500, 0, 1000), box('b', 900, 0, 1000), box('c', 1500, 0, 1000)])).toEqual({ isDone: false, short: 1000 });
  });

  it('leaves equal gaps as they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 900 }),
        fc.array(fc.integer({ min: 300, max: 1500 }), { minLength: 3, maxLength: 9 }),
        (gap, widths) => {
          let at = 0;
          const boxes = widths.map((width, i) => {
            const placed = box(`${i}`, at + width / 2, 100, width, 200);
            at += width + gap;
            return placed;
          });
          const spaced = evenly(boxes);
          expect(spaced.isDone && spaced.gap).toBeCloseTo(gap, 6);
          if (spaced.isDone) for (const [i, b] of spaced.boxes.entries()) expect(b.x).toBeCloseTo((boxes[i] as SetBox).x, 6);
        },
      ),
      seeded,
    );
  });
});

describe('a mirror', () => {
  it('changes left and right; twice is as before, and fronts look into the mirror', () => {
    const west = box('s', 160, 2500, 1200, 320, 270);
    expect(mirrored([west], 3000)).toEqual([{ ...west, x: 5840, rotation: 90 }]);
    fc.assert(
      fc.property(anyBox, fc.integer({ min: -1000, max: 7000 }), (raw, middle) => {
        const one: SetBox = { ...raw, id: 'x' };
        const [seen] = mirrored([one], middle);
        if (!seen) throw new Error('gone');
        const xs = (b: SetBox) => cornersOf(b).map((p) => p.x);
        expect(Math.max(...xs(seen))).toBeCloseTo(2 * middle - Math.min(...xs(one)), 6);
        expect(Math.max(...cornersOf(seen).map((p) => p.y))).toBeCloseTo(Math.max(...cornersOf(one).map((p) => p.y)), 6);
        expect(mirrored([seen], middle)[0]).toMatchObject({ x: one.x, rotation: one.rotation });
      }),
      seeded,
    );
  });
});

describe('several as one', () => {
  it('are turned about their middle and keep their distances', () => {
    const pair = [box('a', 1000, 1000, 400), box('b', 3000, 1000, 400)];
    expect(turnedAbout(pair, boxRound(pair, 0), 90)).toMatchObject([
      { x: 2000, y: 0, rotation: 90 },
      { x: 2000, y: 2000, rotation: 90 },
    ]);
  });

  it('are shifted back into the room together', () => {
    const pair = [box('a', 1000, 1000, 400), box('b', 3000, 1000, 400)];
    const kept = keptTogether(shifted(pair, { x: -5000, y: -5000 }), room, byId(pair));
    expect(kept?.map(({ x, y }) => [Math.round(x), Math.round(y)])).toEqual([
      [200, 160],
      [2200, 160],
    ]);
  });

  it('say that they do not fit rather than leave the room', () => {
    const long = [box('a', 1000, 200, 400), box('b', 5000, 200, 400)];
    // 4.4 m end to end turned upright fits in 5 m; 5.4 m does not.
    expect(keptTogether(turnedAbout(long, { x: 3000, y: 2500 }, 90), room, byId(long))).not.toBeNull();
    const longer = [box('a', 500, 2500, 400), box('b', 5500, 2500, 400)];
    expect(keptTogether(turnedAbout(longer, { x: 3000, y: 2500 }, 90), room, byId(longer))).toBeNull();
  });

  it('never leave the room, wherever they are dragged', () => {
    const set = [box('a', 1000, 1000, 400), box('b', 3000, 1500, 400, 320, 30), box('c', 2000, 2500, 1200, 600, 90)];
    fc.assert(
      fc.property(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }), (x, y) => {
        const kept = keptTogether(shifted(set, { x, y }), room, byId(set));
        if (!kept) throw new Error('a set that fits is kept');
        for (const b of kept) {
          const [w, h] = [reachAlong(b, { x: 1, y: 0 }), reachAlong(b, { x: 0, y: 1 })];
          expect(Math.min(b.x - w, b.y - h, 6000 - b.x - w, 5000 - b.y - h)).toBeGreaterThan(-1);
        }
      }),
      seeded,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { type WayBetween, type WayStop, wayBetween } from '#model/measures/wayBetween.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

const block = { id: 'b1', kind: 'other', x: 3000, y: 2500, width: 2000, depth: 1000 } as const;
const told = (change: PlainRoomChange, from: WayStop, to: WayStop, body = 0): WayBetween => {
  const answer = wayBetween(buildScene(plainRoom(change)), from, to, { body });
  if (!answer.isTold) throw new Error(answer.why);
  return answer;
};

describe('the way between two ends', () => {
  it('is straight in an open room', () => {
    const way = told({}, { x: 1000, y: 1000 }, { x: 4000, y: 4000 });
    expect(way.walk).toBeCloseTo(3000 * Math.SQRT2, 2);
    expect(way.width).toBeCloseTo(2000, 2);
  });

  it('bends round the corners of a block', () => {
    const way = told({ pieces: [block] }, { x: 1000, y: 2500 }, { x: 5000, y: 2500 });
    expect(way.walk).toBeCloseTo(2 * Math.hypot(1000, 500) + 2000, 2);
    expect(way.width).toBeCloseTo(2000, 2);
    expect(way.between.map((end) => end.id).sort()).toEqual(['b1', expect.stringMatching(/^wall:/)]);
  });

  it('turns a body on arcs round the corners', () => {
    const radius = 300;
    const away = Math.hypot(1000, 500);
    const turn = Math.atan2(500, 1000) + Math.asin(radius / away);
    const straight = Math.sqrt(away ** 2 - radius ** 2);
    const way = told({ pieces: [block] }, { x: 1000, y: 2500 }, { x: 5000, y: 2500 }, 2 * radius);
    expect(way.walk).toBeCloseTo(2 * (straight + radius * turn) + 2000, 2);
  });

  it('goes round a round piece on its rim', () => {
    const pieces = [{ id: 'c1', kind: 'other', x: 3000, y: 2500, width: 1000, depth: 1000, round: true } as const];
    const way = told({ pieces }, { x: 1000, y: 2500 }, { x: 5000, y: 2500 });
    const straight = Math.sqrt(2000 ** 2 - 500 ** 2);
    const exact = 2 * (straight + 500 * Math.asin(500 / 2000));
    // The rim is a 48-gon about the circle: a little longer.
    expect(way.walk).toBeGreaterThan(exact - 0.01);
    expect(way.walk).toBeLessThan(exact * 1.0022);
  });

  it('is told without its walk where only the width is asked, with the same words', () => {
    const scene = buildScene(plainRoom({ pieces: [block] }));
    const [from, to] = [
      { x: 1000, y: 2500 },
      { x: 5000, y: 2500 },
    ];
    const whole = wayBetween(scene, from, to);
    expect(wayBetween(scene, from, to, { body: null })).toEqual({ ...whole, walk: null });
    expect(wayBetween(scene, from, 'b1', { body: null })).toEqual({ ...wayBetween(scene, from, 'b1'), walk: null });
  });

  it('goes from a door square to a shelf', () => {
    const shelf = { id: 's1', kind: 'shelf', x: 800, y: 4840, width: 1200, depth: 320, rotation: 180 } as const;
    expect(told({ pieces: [shelf] }, 'd1', 's1').walk).toBeCloseTo(4680, 2);
    // The body's centre stops half its width before the front.
    expect(told({ pieces: [shelf] }, 'd1', 's1', 600).walk).toBeCloseTo(4380, 2);
    expect(told({ pieces: [shelf] }, 's1', 'd1', 600).walk).toBeCloseTo(4380, 2);
  });

  it('goes from door to door without leaving the room', () => {
    const openings = [
      { id: 'd1', kind: 'door', from: 'c1', offset: 100, width: 900, clear: 900 },
      { id: 'd2', kind: 'door', from: 'c1', offset: 5000, width: 900, clear: 900 },
    ] as const;
    const screen = { id: 'w1', kind: 'other', x: 3000, y: 2000, width: 100, depth: 4000 } as const;
    const way = told({ room: { openings: [...openings] }, pieces: [screen] }, 'd1', 'd2');
    expect(way.walk).toBeCloseTo(Math.hypot(1950, 4000) + 100 + Math.hypot(1950, 4000), 2);
    expect(way.width).toBeCloseTo(1000, 2);
  });

  it('starts from the door asked for, not from the best one', () => {
    const openings = [
      { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850 },
      { id: 'd2', kind: 'door', from: 'c1', offset: 4500, width: 900, clear: 850 },
    ] as const;
    const shelf = { id: 's1', kind: 'shelf', x: 800, y: 4840, width: 1200, depth: 320, rotation: 180 } as const;
    const screen = { id: 'w1', kind: 'other', x: 3000, y: 2200, width: 100, depth: 4400 } as const;
    const change = { room: { openings: [...openings] }, pieces: [shelf, screen] };
    expect(told(change, 'd1', 's1').width).toBeGreaterThan(1000);
    expect(told(change, 'd2', 's1').width).toBeCloseTo(600, 2);
    expect(told(change, 's1', 'd2').width).toBeCloseTo(600, 2);
  });

  it('is 0 wide and has no walk where there is no way', () => {
    const screen = { id: 'w1', kind: 'other', x: 3000, y: 2500, width: 6000, depth: 100 } as const;
    expect(told({ pieces: [screen] }, { x: 1000, y: 1000 }, { x: 1000, y: 4000 })).toEqual({
      width: 0,
      at: null,
      between: [],
      walk: null,
      isTold: true,
    });
  });

  it('has no walk for a body wider than the way', () => {
    const screen = { id: 'w1', kind: 'other', x: 2600, y: 2500, width: 5200, depth: 100 } as const;
    const ends = [
      { x: 1000, y: 1000 },
      { x: 1000, y: 4000 },
    ] as const;
    expect(told({ pieces: [screen] }, ...ends).width).toBeCloseTo(800, 2);
    expect(told({ pieces: [screen] }, ...ends, 801).walk).toBeNull();
    expect(told({ pieces: [screen] }, ...ends, 799).walk).toBeGreaterThan(6000);
  });

  it('says what it cannot tell', () => {
    const scene = buildScene(plainRoom());
    expect(wayBetween(scene, 'nothing', 'd1')).toEqual({ isTold: false, why: 'from' });
    expect(wayBetween(scene, 'd1', 'nothing')).toEqual({ isTold: false, why: 'to' });
    const corners = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 5000 },
      { id: 'c3', x: 6000, y: 0 },
      { id: 'c4', x: 0, y: 5000 },
    ];
    expect(wayBetween(buildScene(plainRoom({ room: { corners } })), 'd1', { x: 1, y: 1 })).toEqual({ isTold: false, why: 'walls' });
  });
});

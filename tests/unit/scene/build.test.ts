import { describe, expect, it } from 'vitest';
import { area, signedArea } from '#model/geometry/polygon.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const shelf = (over: object = {}) => ({ id: 's1', kind: 'shelf' as const, x: 3000, y: 160, width: 1200, depth: 320, height: 700, ...over });
const levels = [
  { id: 'l3', surface: 60 },
  { id: 'l1', surface: 640 },
  { id: 'l2', surface: 350 },
];
const near = (p: { x: number; y: number }) => ({ x: expect.closeTo(p.x, 6), y: expect.closeTo(p.y, 6) });

describe('the room', () => {
  it('calls its doors by where they lead, by a typed id, or by the wall they are in, counted along the walk', () => {
    const door = (id: string, from: string, offset: number, name?: string) =>
      ({ id, kind: 'door', from, offset, width: 900, ...(name && { name }) }) as const;
    const labels = (...openings: readonly ReturnType<typeof door>[]) =>
      buildScene(plainRoom({ room: { openings: [...openings] } })).room.openings.map(({ label }) => label);
    expect(labels(door('d1', 'c1', 0), door('door-7xylfuj6o2', 'c3', 0), door('door-8abcdefgh1', 'c2', 0, 'hall'))).toEqual([
      'door d1',
      'the door in the south wall',
      'hall',
    ]);
    expect(labels(door('door-7xylfuj6o2', 'c1', 2000), door('door-8abcdefgh1', 'c1', 0))).toEqual([
      'door 2 in the north wall',
      'door 1 in the north wall',
    ]);
  });
  it('has walls that look inward', () => {
    const { room } = buildScene(plainRoom());
    expect(room.area).toBe(30);
    expect(room.walls.map((w) => w.inward)).toEqual([
      near({ x: 0, y: 1 }),
      near({ x: -1, y: 0 }),
      near({ x: 0, y: -1 }),
      near({ x: 1, y: 0 }),
    ]);
    expect(room.walls[0]?.id).toBe('wall:c1');
  });
  it('drawn the other way round still looks inward', () => {
    const corners = plainRoom().room.corners.toReversed();
    const { room } = buildScene(plainRoom({ room: { corners, openings: [] } }));
    expect(signedArea(room.outline)).toBeGreaterThan(0);
    // The wall from c4 runs along y = 5000 to c3.
    expect(room.walls[0]).toMatchObject({ id: 'wall:c4', a: { x: 0, y: 5000 }, b: { x: 6000, y: 5000 }, inward: near({ x: 0, y: -1 }) });
  });
  it('tells walls that cross', () => {
    const corners = [
      { id: 'a', x: 0, y: 0 },
      { id: 'b', x: 4000, y: 4000 },
      { id: 'c', x: 4000, y: 0 },
      { id: 'd', x: 0, y: 4000 },
    ];
    expect(buildScene(plainRoom({ room: { corners, openings: [] } })).room.isSound).toBe(false);
    expect(buildScene(plainRoom()).room.isSound).toBe(true);
  });
});

describe('a door', () => {
  const door = (over: object) =>
    buildScene(plainRoom({ room: { openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: 1000, width: 900, clear: 850, ...over }] } }))
      .room.openings[0];
  it('hinged on the left as seen from inside has its clear opening at the right jamb', () => {
    const d = door({ swing: 'in-left' });
    expect([d?.clearA, d?.clearB]).toEqual([near({ x: 1050, y: 0 }), near({ x: 1900, y: 0 })]);
  });
  it('hinged on the right has it at the left jamb, swinging out too', () => {
    const d = door({ swing: 'out-right' });
    expect([d?.clearA, d?.clearB]).toEqual([near({ x: 1000, y: 0 }), near({ x: 1850, y: 0 })]);
    expect(d?.swingFloor).toBeNull();
  });
  it('sliding has it in the middle', () => {
    const d = door({ swing: 'sliding' });
    expect([d?.clearA.x, d?.clearB.x]).toEqual([1025, 1875]);
  });
  it('sweeps a quarter circle of its width inside the room', () => {
    const floor = door({ swing: 'in-left' })?.swingFloor ?? [];
    expect(area(floor) / ((Math.PI / 4) * 900 ** 2)).toBeCloseTo(1, 2);
    expect(Math.min(...floor.map((p) => p.y))).toBeCloseTo(0, 6);
    expect(floor[0]).toEqual(near({ x: 1000, y: 0 }));
  });
  it('without a measured leaf is not known; a passage is its width', () => {
    expect(door({ clear: null })?.clear).toBeNull();
    expect(door({ clear: null, kind: 'passage' })?.clear).toBe(900);
  });
  it('in a room drawn the other way round keeps its left and right', () => {
    const corners = plainRoom().room.corners.toReversed();
    const openings = [{ id: 'd1', kind: 'door' as const, from: 'c2', offset: 1000, width: 900, clear: 850, swing: 'in-left' as const }];
    const d = buildScene(plainRoom({ room: { corners, openings } })).room.openings[0];
    // On the wall from c2 to c1 (y = 0, running left): seen from inside, left is the smaller x, where the hinge is.
    expect([d?.clearA, d?.clearB]).toEqual([near({ x: 5000, y: 0 }), near({ x: 4150, y: 0 })]);
  });
  it('is the main one when nothing says otherwise; a passage only without doors', () => {
    const two = (kind: 'door' | 'passage') => [
      { id: 'p', kind: 'passage' as const, from: 'c1', offset: 0, width: 900 },
      { id: 'q', kind, from: 'c2', offset: 0, width: 900 },
    ];
    const main = (kind: 'door' | 'passage') =>
      buildScene(plainRoom({ room: { openings: two(kind) } })).room.openings.find((o) => o.isMain)?.id;
    expect(main('door')).toBe('q');
    expect(main('passage')).toBe('p');
  });
});

describe('a shelf', () => {
  it('at rotation 0 opens toward +y; turned by 90 toward -x', () => {
    const front = (rotation: number) => buildScene(plainRoom({ pieces: [shelf({ y: 2000, rotation })] })).sides[0]?.edge;
    expect(front(0)).toEqual({ a: near({ x: 2400, y: 2160 }), b: near({ x: 3600, y: 2160 }), outward: near({ x: 0, y: 1 }) });
    expect(front(90)?.outward).toEqual(near({ x: -1, y: 0 }));
    expect(front(90)?.a).toEqual(near({ x: 2840, y: 1400 }));
  });
  it('has its left end at the left of a child who faces it, from behind too', () => {
    const scene = buildScene(plainRoom({ pieces: [shelf({ y: 2000, sides: ['front', 'back'] })] }));
    const back = scene.sides.find((s) => s.side === 'back');
    expect(back?.edge.a).toEqual(near({ x: 3600, y: 1840 }));
    expect(back?.edge.outward).toEqual(near({ x: 0, y: -1 }));
  });
  it('has boards from the top, with clear height up to the board above', () => {
    const boards = buildScene(plainRoom({ pieces: [shelf({ levels })] })).sides[0]?.boards;
    expect(boards?.map((b) => [b.surface, b.clear, b.width])).toEqual([
      [640, null, 1160],
      [350, 270, 1160],
      [60, 270, 1160],
    ]);
  });
  it('with a divider gives each side half its depth', () => {
    const boards = buildScene(plainRoom({ pieces: [shelf({ levels, sides: ['front', 'back'], divider: true })] })).sides.map(
      (s) => s.boards[0]?.depth,
    );
    expect(boards).toEqual([160, 160]);
  });
});

describe('trays', () => {
  const materials = [
    { id: 'm1', name: 'One', width: 300, depth: 200, height: 50 },
    { id: 'm2', name: 'Two', width: 100, depth: 200, height: 50 },
  ];
  const place = (over: object, levelsOf: object[] = levels) =>
    buildScene(
      plainRoom({
        materials,
        pieces: [shelf({ levels: levelsOf }), shelf({ id: 't', kind: 'table', x: 1000, y: 3000 })],
        placements: [{ material: 'm1', piece: 's1', level: 'l1', x: 500, ...over }],
      }),
    );
  it('stand on their board in the order of x', () => {
    const scene = buildScene(
      plainRoom({
        materials,
        pieces: [shelf({ levels })],
        placements: [
          { material: 'm1', piece: 's1', level: 'l2', x: 500 },
          { material: 'm2', piece: 's1', level: 'l2', x: 20 },
        ],
      }),
    );
    expect(scene.sides[0]?.boards[1]?.trays.map((t) => t.material.id)).toEqual(['m2', 'm1']);
    expect(scene.stands.get('m1')?.board).toBe(scene.sides[0]?.boards[1]);
  });
  it('turned swap width and depth', () => {
    const tray = place({ turned: true }).stands.get('m1');
    expect([tray?.width, tray?.depth]).toEqual([200, 300]);
  });
  it('on a shelf, a side or a board that is gone are on the table', () => {
    expect(place({ piece: 'gone' }).stands.has('m1')).toBe(false);
    expect(place({ side: 'back' }).stands.has('m1')).toBe(false);
    expect(place({ level: 'gone' }).stands.has('m1')).toBe(false);
  });
  it('without a board stand on the top: the board within 150 of it, else the bare top', () => {
    expect(place({ level: null }).stands.get('m1')?.board?.level?.id).toBe('l1');
    const bare = place({ level: null }, [{ id: 'l3', surface: 60 }]).stands.get('m1')?.board;
    expect([bare?.level, bare?.surface, bare?.width]).toEqual([null, 700, 1200]);
  });
  it('on the floor or on a table stand there without a board', () => {
    expect(place({ piece: null, level: null, x: 10, y: 20 }).stands.get('m1')).toMatchObject({ board: null });
    expect(place({ piece: 't', level: null }).stands.get('m1')).toMatchObject({ board: null });
  });
});

describe('the walk', () => {
  const pieces = [
    shelf({ id: 'west', x: 160, y: 2500, rotation: -90, levels }),
    shelf({ id: 'south', x: 3000, y: 4840, rotation: 180, levels }),
    shelf({ id: 'north', x: 4000, y: 160, levels }),
  ];
  it('runs along the walls clockwise from the main door', () => {
    expect(buildScene(plainRoom({ pieces })).sides.map((s) => s.piece.id)).toEqual(['north', 'south', 'west']);
  });
  it('of the class comes first', () => {
    expect(buildScene(plainRoom({ pieces, walk: [{ piece: 'west', side: 'front' }] })).sides.map((s) => s.piece.id)).toEqual([
      'west',
      'north',
      'south',
    ]);
  });
});

describe('what stands in the way', () => {
  it('is not a rug, a step that is walked on, or a seat that belongs to a table', () => {
    const scene = buildScene(
      plainRoom({
        pieces: [
          { id: 'r', kind: 'rug', x: 1000, y: 1000, width: 1000, depth: 1000 },
          { id: 'c', kind: 'seat', x: 2000, y: 1000, width: 300, depth: 300, table: 't' },
          { id: 'b', kind: 'seat', x: 3000, y: 1000, width: 300, depth: 300 },
        ],
        room: { fixtures: [{ id: 'f', kind: 'step', x: 1000, y: 3000, width: 500, depth: 500, walkable: true }] },
      }),
    );
    expect(scene.bodies.filter((b) => b.isObstacle).map((b) => b.id)).toEqual(['b']);
  });
  it('when round is drawn about its circle, by less than a quarter of a percent', () => {
    const body = buildScene(plainRoom({ pieces: [{ id: 'o', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 1200, round: true }] }))
      .bodies[0];
    const reach = (body?.footprint ?? []).map((p) => Math.hypot(p.x - 3000, p.y - 3000));
    expect(Math.min(...reach)).toBeGreaterThanOrEqual(600);
    expect(Math.max(...reach)).toBeLessThan(600 * 1.0025);
  });
});

describe('the scene after a change', () => {
  const classroom = plainRoom({
    materials: [{ id: 'm1', name: 'Beads', area: 'mathematics', strand: 'counting' }],
    pieces: [shelf({ levels }), shelf({ id: 's2', y: 4800, rotation: 180 })],
    placements: [{ material: 'm1', piece: 's1', level: 'l1', x: 100 }],
  });
  const arrangement = classroom.arrangements[0];
  const first = buildScene(classroom);
  const changed = (change: object) =>
    buildScene({ ...classroom, arrangements: [{ ...arrangement, ...change }] } as typeof classroom, null, first);

  it('that changed nothing is made of the same things', () => {
    const again = changed({ name: 'Autumn' });
    const { classroom: _, arrangement: __, ...rest } = again;
    for (const [key, value] of Object.entries(rest)) expect(value, key).toBe(first[key as keyof typeof rest]);
  });
  it('that moved a tray keeps where the shelves open', () => {
    const moved = changed({ placements: arrangement?.placements.map((p) => ({ ...p, x: 300 })) });
    expect(moved.bodies).toBe(first.bodies);
    expect(moved.openSides).toBe(first.openSides);
    expect(moved.sides[0]).not.toBe(first.sides[0]);
    expect(moved.sides[1]).toBe(first.sides[1]);
    expect(moved.stands.get('m1')?.placement.x).toBe(300);
  });
  it('that moved a shelf keeps the others', () => {
    const moved = changed({ pieces: arrangement?.pieces.map((p) => (p.id === 's1' ? { ...p, x: 3100 } : p)) });
    expect(moved.bodies[0]).not.toBe(first.bodies[0]);
    expect(moved.bodies[1]).toBe(first.bodies[1]);
    expect(moved.room).toBe(first.room);
  });
});

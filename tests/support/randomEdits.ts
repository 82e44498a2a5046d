import type { Report } from '#model/analysis/report.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { rules } from '#model/rules/registry.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Arrangement, Classroom, Material, Piece } from '#model/schema/types.ts';
import { randomWayRoom } from './randomWayRoom.ts';

/** A room of `randomWayRoom` with all the rest of a class: materials on its shelves, chairs, a rug, fixtures, zones, two arrangements. */
export function wholeClass(seed: number): Classroom {
  const base = randomWayRoom(seed);
  const dice = diceOf(seed * 7919);
  const shelves = base.arrangements[0]?.pieces.filter((p) => p.kind === 'shelf') ?? [];
  const strands = ['counting', 'sight', 'sewing'];
  const materials = Array.from({ length: dice.whole(3, 12) }, (_, i) => ({
    id: `m${i}`,
    name: `Material ${i}`,
    strand: dice.pick(strands),
    step: dice.chance(0.8) ? dice.whole(1, 9) * 10 : null,
    width: dice.chance(0.9) ? dice.whole(100, 500) : null,
    depth: dice.whole(80, 350),
    height: dice.whole(30, 250),
    hands: dice.chance(0.5) ? 2 : 1,
    mode: dice.chance(0.3) ? 'grade' : undefined,
    after: i > 0 && dice.chance(0.2) ? [`m${dice.whole(0, i - 1)}`] : [],
  }));
  const boards = [
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 350 },
    { id: 'l3', surface: 60 },
  ];
  const file = {
    ...base,
    materials,
    exitRules: dice.pick(['us-ibc', 'england-adb', null]),
    enrolment: [{ from: '2027-04-01', groups: [{ fromMonths: 36, toMonths: 48, count: 10 }] }],
    room: {
      ...base.room,
      openings: base.room.openings.map((o) => ({ ...o, exit: dice.chance(0.6) })),
      fixtures: dice.chance(0.5) ? [{ id: 'f1', kind: 'sink', x: 1500, y: 300, width: 600, depth: 450, height: 600 }] : [],
      zones: [
        {
          id: 'z1',
          kind: 'storage',
          outline: [
            [100, 100],
            [900, 100],
            [900, 700],
          ],
        },
      ],
    },
    arrangements: [
      {
        ...base.arrangements[0],
        pieces: base.arrangements[0]?.pieces.map((p) => (p.kind === 'shelf' ? { ...p, height: dice.whole(500, 1200), levels: boards } : p)),
        placements: materials
          .filter(() => shelves.length > 0 && dice.chance(0.8))
          .map(({ id }) => ({
            material: id,
            piece: dice.pick(shelves).id,
            level: dice.pick(boards).id,
            x: dice.whole(0, 800),
            y: dice.whole(0, 60),
          })),
        watch: [{ id: 'w1', x: dice.whole(300, 4000), y: dice.whole(300, 3500), eye: 1100 }],
      },
      { id: 'a2', name: 'The other one', pieces: base.arrangements[0]?.pieces.slice(0, 3), placements: [] },
    ],
  };
  const read = readClassroom(JSON.parse(JSON.stringify(file)));
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: found ${p.found}, expected ${p.expected}`).join('\n'));
  return read.classroom;
}

type Dice = ReturnType<typeof diceOf>;

export function diceOf(seed: number) {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    chance: (share: number): boolean => random() < share,
    pick: <T>(list: readonly T[]): T => list[whole(0, list.length - 1)] as T,
  };
}

/** A classroom after one change of a seeded kind, made as the document makes it: whatever did not change is the very same object. */
export function changed(classroom: Classroom, arrangement: string, dice: Dice, report: Report | null): Classroom {
  const inside = (edit: (of: Arrangement) => Arrangement): Classroom => ({
    ...classroom,
    arrangements: classroom.arrangements.map((a) => (a.id === arrangement ? edit(a) : a)),
  });
  // A drag is what people do most.
  if (dice.chance(0.35)) return inside((a) => movePiece(a, dice));
  return dice.pick(edits)({ classroom, inside, dice, report });
}

interface Editing {
  readonly classroom: Classroom;
  readonly inside: (edit: (of: Arrangement) => Arrangement) => Classroom;
  readonly dice: Dice;
  readonly report: Report | null;
}

const swapped = <T extends { readonly id: string }>(list: readonly T[], id: string, change: (entry: T) => T): T[] =>
  list.map((entry) => (entry.id === id ? change(entry) : entry));

function onePiece(a: Arrangement, dice: Dice, change: (piece: Piece) => Piece): Arrangement {
  if (a.pieces.length === 0) return a;
  return { ...a, pieces: swapped(a.pieces, dice.pick(a.pieces).id, change) };
}

const movePiece = (a: Arrangement, dice: Dice): Arrangement =>
  onePiece(a, dice, (p) => ({ ...p, x: p.x + dice.whole(-600, 600), y: p.y + (dice.chance(0.5) ? 0 : dice.between(-300, 300)) }));

function oneMaterial({ classroom, dice }: Editing, change: (material: Material) => Material): Classroom {
  return { ...classroom, materials: swapped(classroom.materials, dice.pick(classroom.materials).id, change) };
}

const setRoom = ({ classroom }: Editing, change: Partial<Classroom['room']>): Classroom => ({
  ...classroom,
  room: { ...classroom.room, ...change },
});

const edits: readonly ((editing: Editing) => Classroom)[] = [
  // Pieces
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, rotation: dice.pick([0, 90, 180, 270, dice.between(0, 360)]) }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, width: dice.whole(200, 2000), depth: dice.whole(200, 900) }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, locked: !p.locked }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, name: `Piece ${dice.whole(1, 99)}` }))),
  ({ inside, dice }) =>
    inside((a) =>
      onePiece(a, dice, (p) => ({ ...p, height: dice.pick([null, 400, 900, 1500]), anchored: dice.pick([null, true, false]) })),
    ),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, sides: dice.pick([[], ['front'], ['front', 'back'], ['left']]) }))),
  ({ inside, dice }) =>
    inside((a) => onePiece(a, dice, (p) => ({ ...p, kind: dice.pick(['shelf', 'table', 'rug', 'other', 'adult-seat']) }))),
  ({ inside, dice }) =>
    inside((a) => onePiece(a, dice, (p) => ({ ...p, for: dice.pick(['children', 'adults']), closed: dice.chance(0.3) }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, round: dice.chance(0.5) }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, seatSides: dice.pick([{}, { front: 2 }, { back: 1, left: 1 }]) }))),
  ({ inside, dice }) => inside((a) => onePiece(a, dice, (p) => ({ ...p, levels: p.levels.slice(0, dice.whole(0, 3)) }))),
  ({ inside, dice }) => inside((a) => ({ ...a, pieces: a.pieces.filter((_, i) => i !== dice.whole(0, a.pieces.length - 1)) })),
  ({ inside }) => inside((a) => ({ ...a, pieces: a.pieces.toReversed() })),
  ({ inside, dice }) =>
    inside((a) => {
      const like = a.pieces[0];
      if (!like) return a;
      const id = `new${dice.whole(1, 99_999)}`;
      if (a.pieces.some((p) => p.id === id)) return a;
      const fresh = { ...like, id, x: dice.whole(0, 6000), y: dice.whole(0, 5000), rotation: dice.whole(0, 359) };
      return { ...a, pieces: dice.chance(0.5) ? [...a.pieces, fresh] : [fresh, ...a.pieces] };
    }),
  // A chair, that may belong to a table
  ({ inside, dice }) =>
    inside((a) => {
      const like = a.pieces[0];
      const id = `chair${dice.whole(1, 99_999)}`;
      if (!like || a.pieces.some((p) => p.id === id)) return a;
      const table = a.pieces.find((p) => p.kind === 'table')?.id ?? null;
      const at = { x: dice.whole(0, 6000), y: dice.whole(0, 5000), width: 350, depth: 350 };
      return { ...a, pieces: [...a.pieces, { ...like, ...at, id, kind: 'seat', table: dice.chance(0.6) ? table : null }] };
    }),
  // Trays
  ({ classroom, inside, dice }) =>
    inside((a) => {
      const material = dice.pick(classroom.materials).id;
      const shelf = a.pieces.filter((p) => p.kind === 'shelf')[0];
      const placement = {
        material,
        piece: dice.chance(0.2) ? null : (shelf?.id ?? 'gone'),
        side: 'front' as const,
        level: dice.chance(0.2) ? null : 'l1',
        x: dice.whole(0, 900),
        y: dice.whole(0, 80),
        turned: dice.chance(0.3),
      };
      return { ...a, placements: [...a.placements.filter((p) => p.material !== material), placement] };
    }),
  ({ inside, dice }) =>
    inside((a) => ({ ...a, placements: a.placements.map((p) => (dice.chance(0.3) ? { ...p, x: p.x + dice.whole(-90, 90) } : p)) })),
  ({ inside, dice }) => inside((a) => ({ ...a, placements: a.placements.filter(() => dice.chance(0.8)) })),
  (editing) =>
    oneMaterial(editing, (m) => ({ ...m, step: editing.dice.pick([null, 10, 30, 60]), name: `Thing ${editing.dice.whole(1, 99)}` })),
  (editing) => oneMaterial(editing, (m) => ({ ...m, width: editing.dice.pick([null, 150, 600]), height: editing.dice.whole(20, 300) })),
  ({ classroom, dice }) => ({
    ...classroom,
    materials: classroom.materials
      .filter(() => dice.chance(0.9))
      .concat(classroom.materials.slice(0, 1))
      .filter((m, i, all) => all.indexOf(m) === i),
  }),
  ({ inside, dice }) =>
    inside((a) => ({
      ...a,
      walk: a.pieces.filter((p) => p.kind === 'shelf' && dice.chance(0.7)).map((p) => ({ piece: p.id, side: 'front' })),
    })),
  ({ inside, dice }) =>
    inside((a) => ({ ...a, watch: [{ id: 'w1', x: dice.whole(0, 6000), y: dice.whole(0, 5000), eye: dice.whole(900, 1700) }] })),
  ({ inside, dice }) => inside((a) => ({ ...a, name: `Layout ${dice.whole(1, 9)}` })),
  // The class
  ({ classroom, dice }) => ({ ...classroom, name: `Class ${dice.whole(1, 99)}` }),
  ({ classroom, dice }) => ({
    ...classroom,
    children: {
      ...classroom.children,
      percentile: dice.pick([5, 10, 50]),
      groups: classroom.children.groups.map((g) => ({ ...g, count: dice.whole(0, 30), fromMonths: dice.pick([30, 36, 60]) })),
    },
  }),
  ({ classroom, dice }) => ({ ...classroom, ruleSet: dice.pick(['england', 'scotland', 'us-california', 'own']) }),
  ({ classroom, dice }) => ({ ...classroom, asked: { walkway_in_room: dice.pick(['deduct', 'count']) } }),
  ({ classroom, dice }) => ({ ...classroom, exitRules: dice.pick(['us-ibc', 'england-adb', null]) }),
  ({ classroom, dice }) => ({
    ...classroom,
    access: {
      ...classroom.access,
      required: dice.chance(0.5),
      routeWidth: dice.pick([915, 800, 1200]),
      pinchWidth: dice.pick([815, 500]),
      frontStrip: dice.pick([0, 600]),
    },
  }),
  ({ classroom, dice }) => ({
    ...classroom,
    floorWork: { ...classroom.floorWork, gap: dice.pick([0, 300]), wanted: dice.pick([null, 4]) },
  }),
  ({ classroom, dice }) => ({ ...classroom, display: { ...classroom.display, units: dice.pick(['metric', 'imperial']) } }),
  ({ classroom, dice }) => ({ ...classroom, display: { ...classroom.display, readingDirection: dice.pick(['ltr', 'rtl']) } }),
  ({ classroom, dice }) => {
    const rule = dice.pick(rules);
    const option = dice.pick([...Object.keys(rule.options.shape), 'nothing-of-the-kind']);
    return { ...classroom, options: { ...classroom.options, [rule.id]: { [option]: dice.pick([0, 1, 40, true, 'words']) } } };
  },
  ({ classroom, dice, report }) => {
    if (!report || report.findings.length === 0) return { ...classroom, left: [] };
    return {
      ...classroom,
      left: [...classroom.left.slice(-4), { key: dice.pick(report.findings).key, reason: 'it is meant so', by: '', at: '' }],
    };
  },
  // The room
  (editing) => {
    const { classroom, dice } = editing;
    const at = dice.pick(classroom.room.corners).id;
    return setRoom(editing, {
      corners: swapped(classroom.room.corners, at, (c) => ({ ...c, x: c.x + dice.whole(-400, 400), y: c.y + dice.whole(-400, 400) })),
    });
  },
  // Walls that cross: the way back is another edit.
  (editing) => {
    const [a, b, ...rest] = editing.classroom.room.corners;
    return a && b ? setRoom(editing, { corners: [b, a, ...rest] }) : editing.classroom;
  },
  (editing) => {
    const { classroom, dice } = editing;
    const { openings } = classroom.room;
    if (openings.length === 0) return classroom;
    return setRoom(editing, {
      openings: swapped(openings, dice.pick(openings).id, (o) => ({
        ...o,
        width: dice.whole(500, 1400),
        clear: dice.chance(0.3) ? null : dice.whole(400, 1000),
        offset: Math.max(0, o.offset + dice.whole(-300, 300)),
        swing: dice.pick(['in-left', 'out-right', 'sliding', 'none']),
        exit: dice.chance(0.7),
      })),
    });
  },
  (editing) => setRoom(editing, { openings: editing.classroom.room.openings.filter(() => editing.dice.chance(0.7)) }),
  (editing) => {
    const { classroom, dice } = editing;
    const id = `d${dice.whole(10, 99_999)}`;
    const like = classroom.room.openings[0];
    if (!like || classroom.room.openings.some((o) => o.id === id)) return classroom;
    return setRoom(editing, {
      openings: [...classroom.room.openings, { ...like, id, from: dice.pick(classroom.room.corners).id, offset: dice.whole(0, 2000) }],
    });
  },
  (editing) => {
    const { dice } = editing;
    const sink = {
      id: 'f9',
      kind: 'sink' as const,
      x: dice.whole(0, 6000),
      y: dice.whole(0, 5000),
      width: 500,
      depth: 400,
      height: null,
      rotation: 0,
      walkable: dice.chance(0.2),
    };
    return setRoom(editing, { fixtures: [...editing.classroom.room.fixtures.filter((f) => f.id !== 'f9'), sink] });
  },
  (editing) => setRoom(editing, { zones: editing.dice.chance(0.5) ? [] : editing.classroom.room.zones }),
  (editing) => setRoom(editing, { toilets: editing.dice.whole(0, 4), otherRooms: editing.dice.pick([[], [{ name: 'Hall', area: 12 }]]) }),
  // Copies of everything: nothing is the same object, everything says the same
  ({ classroom }) => structuredClone(classroom),
];

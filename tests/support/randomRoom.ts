import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from './plainRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];
type Placement = NonNullable<PlainRoomChange['placements']>[number];

/** Pieces, trays and walls at random: most rules find something. The same for a seed. */
export function randomRoom(seed: number): Classroom {
  const random = seededRandom(seed);
  const between = (from: number, to: number): number => Math.round(from + (to - from) * random());
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const pieces = Array.from({ length: between(1, 7) }, (_, i) => ({
    id: `p${i}`,
    kind: pick(['shelf', 'shelf', 'shelf', 'table', 'seat'] as const),
    x: between(200, 5800),
    y: between(200, 4800),
    rotation: pick([0, 90, 180, 270, between(0, 359)]),
    width: between(300, 1800),
    depth: between(250, 700),
    height: pick([null, 500, 900, 1400]),
    anchored: pick([null, true, false]),
    sides: pick([['front'], ['front'], ['front', 'back'], ['left']] as const).slice(),
    levels: [850, 450, 60].slice(between(0, 2)).map((surface, n) => ({ id: `l${n}`, surface })),
    table: pick([null, 'p0']),
    locked: random() < 0.1,
  }));
  const count = between(0, 24);
  const materials = Array.from(
    { length: count },
    (_, i): MaterialInput => ({
      id: `m${i}`,
      name: `thing ${i}`,
      area: pick(['sensorial', 'sensorial', 'practical-life']),
      strand: pick(['a', 'b', 'c', '']),
      step: pick([null, null, between(1, 9)]),
      after: random() < 0.4 ? [pick([`m${between(0, count - 1)}`, 'se-tower', 'nobody'])] : [],
      state: pick(['out', 'out', 'out', 'store', 'mend']),
      width: pick([null, between(80, 500)]),
      depth: between(80, 350),
      height: pick([null, between(20, 250)]),
      mass: pick([null, between(1, 40) / 10]),
      carried: pick([null, 'whole', 'pieces', 'stays']),
      hands: pick([null, 1, 2]),
      fromMonths: pick([null, 30, 60]),
      smallest: pick([null, between(3, 80), [between(2, 40), between(2, 40), between(2, 70)]] as const) as MaterialInput['smallest'],
    }),
  );
  const placements = materials.flatMap(({ id }): Placement[] =>
    random() < 0.25
      ? []
      : [
          {
            material: id,
            piece: pick(pieces).id,
            side: pick(['front', 'front', 'front', 'back']),
            level: pick(['l0', 'l0', 'l1', 'l2']),
            x: between(0, 900),
          },
        ],
  );
  const survey = [6000, 5000, 6000, 5000].map((length, i) => ({
    from: `c${i + 1}`,
    length: length + between(-60, 60),
    turn: 90 + between(-1, 1) / 2,
  }));
  return plainRoom({
    access: { wheelchair: random() < 0.5 },
    children: { groups: [{ id: 'g1', fromMonths: pick([30, 36, 60]), toMonths: 72, count: 8 }] },
    materials,
    pieces,
    placements,
    room: {
      openings: [
        {
          id: 'd1',
          kind: 'door',
          from: pick(['c1', 'c2', 'c3']),
          offset: between(0, 3500),
          width: 900,
          swing: pick(['in-left', 'in-right', 'out-left']),
        },
      ],
      survey: { walls: survey },
    },
  });
}

/** Tall shelves that nothing holds, some way before the walls they have their backs to. */
export function looseRoom(seed: number): Classroom {
  const random = seededRandom(seed);
  const between = (from: number, to: number): number => Math.round(from + (to - from) * random());
  const shelf = (i: number) => ({
    id: `s${i}`,
    kind: 'shelf' as const,
    width: between(600, 1400),
    depth: between(250, 450),
    height: between(900, 1600),
    anchored: (random() < 0.85 ? false : null) as boolean | null,
    locked: random() < 0.1,
  });
  const pieces = [
    { ...shelf(0), x: between(900, 2200), y: between(230, 900), rotation: 0 },
    { ...shelf(1), x: between(5100, 5750), y: between(1500, 3500), rotation: 90 + (random() < 0.2 ? between(-20, 20) : 0) },
    { ...shelf(2), x: between(3200, 4800), y: between(4100, 4770), rotation: 180 },
  ].slice(0, between(1, 3));
  // Sometimes something stands in the way back.
  if (random() < 0.4) pieces.push({ ...shelf(3), x: between(500, 5500), y: between(400, 4600), rotation: 0, anchored: true });
  return plainRoom({ pieces });
}

/** One shelf of boards with trays of known size, from too high to low. */
export function trayRoom(seed: number): Classroom {
  const random = seededRandom(seed);
  const between = (from: number, to: number): number => Math.round(from + (to - from) * random());
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const levels = [between(880, 1250), between(500, 760), between(250, 380), between(40, 80)].map((surface, n) => ({
    id: `l${n}`,
    surface,
  }));
  const count = between(2, 9);
  const materials = Array.from(
    { length: count },
    (_, i): MaterialInput => ({
      id: `m${i}`,
      name: `thing ${i}`,
      area: 'sensorial',
      strand: pick(['a', 'b']),
      step: between(1, 6),
      width: between(100, 420),
      depth: between(80, 300),
      height: between(30, 160),
      hands: pick([1, 2]),
      mass: between(2, 30) / 10,
      carried: pick(['whole', 'pieces'] as const),
      fromMonths: pick([null, 48]),
      smallest: 60,
    }),
  );
  return plainRoom({
    children: { groups: [{ id: 'g1', fromMonths: pick([36, 48]), toMonths: 72, count: 8 }] },
    materials,
    pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 175, width: 1400, depth: 350, height: between(1000, 1300), anchored: true, levels }],
    placements: materials.map(({ id }) => ({
      material: id,
      piece: 's1',
      side: 'front' as const,
      level: pick(['l0', 'l0', 'l1', 'l2']),
      x: between(0, 1000),
      y: pick([0, 0, 60]),
    })),
  });
}

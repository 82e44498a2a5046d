import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { PlainRoomChange } from './plainRoom.ts';

/** A room drawn by a seed: a rectangle or an L, two doors, some furniture at any turn (it may overlap, as in a drag). */
export function seededRoom(seed: number): PlainRoomChange & { readonly room: NonNullable<PlainRoomChange['room']> } {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => Math.round(low + random() * (high - low));
  const width = between(3000, 8000);
  const depth = between(3000, 7000);
  const cutX = between(1500, width - 800);
  const cutY = between(1500, depth - 800);
  const isEll = random() < 0.4;
  const outline: [number, number][] = isEll
    ? [
        [0, 0],
        [width, 0],
        [width, cutY],
        [cutX, cutY],
        [cutX, depth],
        [0, depth],
      ]
    : [
        [0, 0],
        [width, 0],
        [width, depth - (random() < 0.3 ? between(200, 900) : 0)],
        [0, depth],
      ];
  const kinds = ['shelf', 'table', 'other', 'seat'] as const;
  return {
    room: {
      corners: outline.map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
      openings: [
        { id: 'd1', kind: 'door', from: 'c1', offset: 300, width: 900, clear: 850, swing: random() < 0.5 ? 'in-left' : 'out-right' },
        { id: 'd2', kind: 'passage', from: `c${outline.length}`, offset: 200, width: 1000 },
      ],
    },
    pieces: Array.from({ length: between(0, 9) }, (_, i) => {
      const kind = kinds[Math.floor(random() * kinds.length)] ?? 'other';
      return {
        id: `p${i}`,
        kind,
        x: between(300, width - 300),
        y: between(300, depth - 300),
        width: kind === 'seat' ? 350 : between(500, 1400),
        depth: kind === 'seat' ? 350 : between(300, 700),
        rotation: random() < 0.6 ? 90 * Math.floor(random() * 4) : between(0, 359),
        ...(kind === 'table' && { seatSides: { front: 1 + Math.floor(random() * 2) } }),
        ...(kind === 'other' && random() < 0.5 && { round: true }),
      };
    }),
  };
}

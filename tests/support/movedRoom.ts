import { turn } from '#model/geometry/vec.ts';
import type { Classroom, Opening, Piece } from '#model/schema/types.ts';

/** Every piece of every arrangement changed alike. */
export const withPieces = (classroom: Classroom, change: (piece: Piece) => Piece): Classroom => ({
  ...classroom,
  arrangements: classroom.arrangements.map((a) => ({ ...a, pieces: a.pieces.map(change) })),
});

/** The whole room moved by (dx, dy) and turned by degrees. */
export function moved(classroom: Classroom, degrees: number, dx: number, dy: number): Classroom {
  const place = (x: number, y: number) => {
    const p = turn({ x, y }, degrees);
    return { x: p.x + dx, y: p.y + dy };
  };
  const { room } = classroom;
  const corners = room.corners.map((c) => ({ ...c, ...place(c.x, c.y) }));
  return withPieces(
    withWatch({ ...classroom, room: { ...room, corners } }, ({ x, y }) => place(x, y)),
    (p) => ({ ...p, ...place(p.x, p.y), rotation: p.rotation + degrees }),
  );
}

const mirrorSwing: Record<Opening['swing'], Opening['swing']> = {
  'in-left': 'in-right',
  'in-right': 'in-left',
  'out-left': 'out-right',
  'out-right': 'out-left',
  sliding: 'sliding',
  none: 'none',
};
export const mirrorSide = { front: 'front', back: 'back', left: 'right', right: 'left' } as const;

/** The room in a mirror at the y axis, its walls still clockwise. */
export function mirrored(classroom: Classroom): Classroom {
  const { room } = classroom;
  const n = room.corners.length;
  const corners = room.corners.map((c) => ({ ...c, x: -c.x })).reverse();
  const openings = room.openings.map((o): Opening => {
    const at = room.corners.findIndex((c) => c.id === o.from);
    const a = room.corners[at];
    const b = room.corners[(at + 1) % n];
    const long = a && b ? Math.hypot(b.x - a.x, b.y - a.y) : 0;
    return { ...o, from: b?.id ?? o.from, offset: long - o.offset - o.width, swing: mirrorSwing[o.swing] };
  });
  return withPieces(
    withWatch({ ...classroom, room: { ...room, corners, openings } }, ({ x, y }) => ({ x: -x, y })),
    (p) => ({
      ...p,
      x: -p.x,
      rotation: -p.rotation,
      sides: p.sides.map((side) => mirrorSide[side]),
      seatSides: Object.fromEntries(Object.entries(p.seatSides).map(([side, n]) => [mirrorSide[side as keyof typeof mirrorSide], n])),
      ...(p.outline && { outline: p.outline.map(([x, y]): [number, number] => [-x, y]) }),
    }),
  );
}

/** The same room with every piece named and listed otherwise. */
export const relabelled = (classroom: Classroom): Classroom => {
  const renamed = withPieces(classroom, (p) => ({ ...p, id: `q${p.id}`, ...(p.table !== null && { table: `q${p.table}` }) }));
  return { ...renamed, arrangements: renamed.arrangements.map((a) => ({ ...a, pieces: [...a.pieces].reverse() })) };
};

const withWatch = (classroom: Classroom, at: (p: { x: number; y: number }) => { x: number; y: number }): Classroom => ({
  ...classroom,
  arrangements: classroom.arrangements.map((a) => ({ ...a, ...(a.watch && { watch: a.watch.map((w) => ({ ...w, ...at(w) })) }) })),
});

import { distance, lerp, type Point, sub, unit } from '#model/geometry/vec.ts';
import { buildRoom } from '#model/scene/room.ts';
import { fixture as fixtureSchema, opening as openingSchema } from '#model/schema/room.ts';
import type { Corner, Fixture, Opening, Room } from '#model/schema/types.ts';
import { newOpening } from '../plan/newThings.ts';
import { openingsOnNewWalls } from '../plan/roomShape.ts';
import type { Draft, DraftFixture } from './draft.ts';
import { faceOf, placeByWalls } from './fixturePlace.ts';
import { isByDiagonals, laidAt, layoutOf, typedTurn, type Walk } from './walk.ts';

/** A room as the walk lays it out, before it is written. */
export interface LaidRoom {
  readonly room: Room;
  /** Openings that went to another wall because theirs is gone. */
  readonly moved: readonly string[];
  /** Openings whose wall of the walk has no length yet: they stand on its last one. */
  readonly unwalled: readonly string[];
  /** Fixtures that stay where they were, new ones at the middle of their wall: the two they were measured from run side by side. */
  readonly unplaced: readonly string[];
}

/** What was typed, without the noise of reading it. */
const hundredth = (value: number): number => Math.round(value * 100) / 100 + 0;

/** The room after the walk: walls, what was taped, and doors, windows and fixtures on their walls. Null: it does not come round. */
export function laidRoom(before: Room, draft: Draft, walk: Walk): LaidRoom | null {
  const layout = layoutOf(walk, draft.isSpread);
  if (!layout) return null;
  const { walls, isLeftward } = walk;
  const placed = onSheet(before, walk, layout);
  const count = walls.length;
  const id = (i: number): string => walls[((i % count) + count) % count]?.corner ?? '';
  // The format has walls clockwise: a walk to the left is written the other way about.
  const order = isLeftward ? [0, ...Array.from({ length: count - 1 }, (_, k) => count - 1 - k)] : walls.map((_, i) => i);
  const corners = order.map(
    (i): Corner => ({ ...before.corners.find((corner) => corner.id === id(i)), ...(placed[i] as Point), id: id(i) }),
  );
  const long = (i: number): number => distance(placed[i] as Point, placed[(i + 1) % count] as Point);
  const index = new Map(walls.map(({ corner }, i) => [corner, i]));

  const firstNewWayIn = draft.openings.find(({ isNew, kind }) => isNew && kind !== 'window');
  const unwalled: string[] = [];
  const openings = draft.openings.flatMap((opening): Opening[] => {
    const found = index.get(opening.wall);
    if (found === undefined) unwalled.push(opening.key);
    const i = found ?? count - 1;
    const along = found === undefined ? Math.min(opening.offset, long(i) - opening.width) : opening.offset;
    const from = isLeftward ? id(i + 1) : id(i);
    const offset = Math.max(0, isLeftward ? long(i) - along - opening.width : along);
    const { kind, name, width, sill, swing } = opening;
    const was = before.openings.find((one) => one.id === opening.key);
    const set = { from, offset, width, sill, swing, ...((name !== '' || was?.name !== undefined) && { name }) };
    if (was) return [{ ...was, kind, ...set }];
    if (!opening.isNew) return [];
    const isFirst = opening === firstNewWayIn && !before.openings.some((one) => one.kind !== 'window');
    return [openingSchema.parse({ ...newOpening(kind, { from, offset, width }, isFirst), ...set, id: opening.key })];
  });

  const unplaced: string[] = [];
  const fixtures = draft.fixtures.flatMap((fixture): Fixture[] => {
    const { kind, name, width, depth, height } = fixture;
    const was = before.fixtures.find((one) => one.id === fixture.key);
    if (!was && !fixture.isNew) return [];
    const [i, k] = [index.get(fixture.wall), index.get(fixture.side)];
    const faces = [i, k].map((at) => (at === undefined ? null : faceOf(placed, at, !isLeftward)));
    const place =
      faces[0] && faces[1] && placeByWalls(fixture, fixture.turned, { ...faces[0], gap: fixture.gap }, { ...faces[1], gap: fixture.along });
    if (!place) unplaced.push(fixture.key);
    const at =
      place ?? (was && { x: was.x, y: was.y, rotation: was.rotation }) ?? atMiddle(fixture, faces[0] ?? faceOf(placed, 0, !isLeftward));
    const set = { width, depth, height, ...at, ...((name !== '' || was?.name !== undefined) && { name }) };
    return [was ? { ...was, ...set } : fixtureSchema.parse({ id: fixture.key, kind, ...set })];
  });

  const survey = {
    ...before.survey,
    walls: order.flatMap((_, k) => {
      // Forwards wall i begins at corner i; the other way about it begins where it ended.
      const i = isLeftward ? (count - 1 - k + count) % count : k;
      const wall = walls[i];
      if (!wall || wall.length === null) return [];
      const turnOf = (at: number): number => {
        const other = walls[(at + count) % count];
        return other && isByDiagonals(other)
          ? (walk.fit?.turns[(at + count) % count]?.value ?? typedTurn(other))
          : other
            ? typedTurn(other)
            : 0;
      };
      const bend = isLeftward ? walls[(i - 1 + count) % count] : wall;
      return [
        {
          from: isLeftward ? id(i + 1) : wall.corner,
          length: hundredth(wall.length),
          turn: hundredth(isLeftward ? -turnOf(i - 1) : turnOf(i)),
          ...(bend && isByDiagonals(bend) && { turnBy: 'diagonals' as const }),
        },
      ];
    }),
    diagonals: draft.diagonals.flatMap(({ from, to, length }) =>
      length !== null && from !== to && index.has(from) && index.has(to) ? [{ from, to, length: hundredth(length) }] : [],
    ),
  };

  const known = new Set(draft.openings.map(({ key }) => key));
  const ids = new Set(walls.map(({ corner }) => corner));
  const others = before.openings.filter(({ id: one }) => !known.has(one));
  const bare: Room = { ...before, corners, openings: [], survey: survey.walls.length + survey.diagonals.length > 0 ? survey : null };
  const lost = others.filter(({ from }) => !ids.has(from));
  const again = openingsOnNewWalls(buildRoom({ ...before, openings: lost }), buildRoom(bare));
  const kept = others.map((opening) => ({ ...opening, ...again.find(({ id: one }) => one === opening.id) }));
  const added = fixtures.filter(({ id: one }) => !before.fixtures.some((was) => was.id === one));
  const stayed = before.fixtures.map((was) => fixtures.find(({ id: one }) => one === was.id) ?? was);
  const room: Room = { ...bare, openings: [...openings, ...kept], fixtures: [...stayed, ...added] };
  return { room, moved: again.map(({ id: one }) => one), unwalled, unplaced };
}

/** As far off its wall as was typed, half way along it. */
function atMiddle(fixture: DraftFixture, face: ReturnType<typeof faceOf>): { x: number; y: number; rotation: number } {
  const across = { a: lerp(face.a, face.b, 0.5), b: face.b, inward: unit(sub(face.b, face.a)), gap: 0 };
  const middle = lerp(face.a, face.b, 0.5);
  return placeByWalls(fixture, fixture.turned, { ...face, gap: fixture.gap }, across) ?? { ...middle, rotation: 0 };
}

/** Corners of a walk (mm) on the sheet: a corner that was there stays, and the wall after it runs as it ran. */
export function onSheet(before: Room, { walls }: Pick<Walk, 'walls'>, layout: readonly Point[]): Point[] {
  const count = before.corners.length;
  for (const [i, { corner }] of walls.entries()) {
    const k = before.corners.findIndex(({ id }) => id === corner);
    const [at, next] = [before.corners[k], before.corners[(k + 1) % count]];
    if (!at || !next || next.id !== walls[(i + 1) % walls.length]?.corner) continue;
    const run = sub(next, at);
    return laidAt(layout, i, at, (Math.atan2(run.y, run.x) * 180) / Math.PI);
  }
  const [first] = before.corners;
  return laidAt(layout, 0, first ?? { x: 0, y: 0 }, 0);
}

import type { Point } from '#model/geometry/vec.ts';
import { add, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneWall } from '#model/scene/types.ts';
import { piece as pieceSchema } from '#model/schema/arrangement.ts';
import { fixture as fixtureSchema } from '#model/schema/room.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { snapTolerance, TO_WALL, tidyPlace } from './drag/movePieceDrag.ts';
import { type NearDistance, nearDistances } from './nearDistances.ts';
import { newPiece } from './newThings.ts';
import { type PlanModel, roomOf, surroundings } from './planModel.ts';
import { placeOnWall } from './roomShape.ts';
import { snap } from './snap.ts';
import { toPlan } from './viewport.ts';

/** A new thing as it would be set down at the pointer. */
export type Ghost =
  | { readonly kind: 'piece'; readonly piece: Piece; readonly distances: readonly NearDistance[] }
  | { readonly kind: 'fixture'; readonly fixture: Fixture; readonly distances: readonly NearDistance[] }
  | {
      readonly kind: 'opening';
      readonly wall: SceneWall;
      readonly offset: number;
      readonly width: number;
      readonly a: Point;
      readonly b: Point;
    };

const nothing: ReadonlySet<string> = new Set();

export function ghostOf(model: PlanModel): Ghost | null {
  return model.pointer && ghostAt(model, toPlan(model.view, model.pointer));
}

/** The new thing that the tool in hand would set down at a point (mm). */
export function ghostAt(model: PlanModel, p: Point): Ghost | null {
  const { tool, size } = model.store.state();
  if (!tool) return null;
  if (tool.kind === 'opening') {
    const place = placeOnWall(roomOf(model), p, size.width);
    if (!place) return null;
    const along = unit(sub(place.wall.b, place.wall.a));
    const a = add(place.wall.a, scale(along, place.offset));
    return { kind: 'opening', ...place, a, b: add(a, scale(along, place.width)) };
  }
  if (tool.kind !== 'piece' && tool.kind !== 'fixture') return null;
  const around = surroundings(model, nothing);
  const turnsToWall =
    tool.of === 'shelf' || tool.of === 'mat-stand' || (tool.kind === 'fixture' && tool.of !== 'column' && tool.of !== 'step');
  const box = { ...tidyPlace(p, false), width: size.width, depth: size.depth, rotation: 0 };
  const place = snap(box, around, { tolerance: snapTolerance(model), toWall: TO_WALL, turnsToWall });
  const at = { x: place.x, y: place.y, rotation: place.rotation };
  const distances = nearDistances({ ...box, ...at }, around);
  if (tool.kind === 'piece')
    return { kind: 'piece', piece: pieceSchema.parse({ id: 'new', ...newPiece(tool.of, size, at, '') }), distances };
  return { kind: 'fixture', fixture: fixtureSchema.parse({ id: 'new', kind: tool.of, ...at, ...size }), distances };
}

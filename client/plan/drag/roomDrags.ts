import { dot, type Point, sub } from '#model/geometry/vec.ts';
import type { SceneOpening, SceneWall } from '#model/scene/types.ts';
import type { Corner, Room } from '#model/schema/types.ts';
import { type PlanModel, roomOf } from '../planModel.ts';
import { placeOnWall, slideOn, squareCorner, toGrid, withCorner, withWallMoved } from '../roomShape.ts';
import { writeRoom } from '../roomWrites.ts';
import type { Drag } from './drag.ts';
import { snapTolerance } from './movePieceDrag.ts';

/** mm: how much nearer another wall must be before a door goes over to it */
const STAY = 400;

/** Slides a door or window along its wall, or over to a wall it is brought to. */
export function moveOpeningDrag(model: PlanModel, opening: SceneOpening, grabbed: Point): Drag {
  const before = model.session.classroom().room;
  const middle = { x: (opening.a.x + opening.b.x) / 2, y: (opening.a.y + opening.b.y) / 2 };
  const grip = sub(middle, grabbed);
  let place: { from: string; offset: number } | null = null;
  return roomDrag(model, {
    draw(p) {
      const at = { x: p.x + grip.x, y: p.y + grip.y };
      const nearest = placeOnWall(roomOf(model), at, opening.raw.width);
      const own = roomOf(model).walls.find((w) => w.corner === (place?.from ?? opening.raw.from));
      const stays = own && (!nearest || offWall(own, at) < offWall(nearest.wall, at) + STAY);
      place = stays
        ? { from: own.corner, offset: slideOn(own, at, opening.raw.width) }
        : nearest && { from: nearest.wall.corner, offset: nearest.offset };
      const moved = place;
      if (!moved) return before;
      return { ...before, openings: before.openings.map((o) => (o.id === opening.id ? { ...o, ...moved } : o)) };
    },
    write() {
      if (place) model.session.commands.changeOpening(opening.id, place);
    },
  });
}

const offWall = (wall: SceneWall, p: Point): number => Math.abs(dot(sub(p, wall.a), wall.inward));

export function moveCornerDrag(model: PlanModel, corner: Corner, grabbed: Point): Drag {
  const before = model.session.classroom().room;
  const grip = sub(corner, grabbed);
  let after = before;
  return roomDrag(model, {
    draw(p, isFree) {
      const at = { x: p.x + grip.x, y: p.y + grip.y };
      const to = isFree ? { x: toGrid(at.x), y: toGrid(at.y) } : squareCorner(before, corner.id, at, 2 * snapTolerance(model));
      after = withCorner(before, corner.id, to);
      return after;
    },
    write: () => writeRoom(model.session, before, after),
  });
}

export function moveWallDrag(model: PlanModel, wall: SceneWall, grabbed: Point): Drag {
  const before = model.session.classroom().room;
  let after = before;
  return roomDrag(model, {
    draw(p) {
      after = withWallMoved(before, wall, toGrid(dot(sub(p, grabbed), wall.inward)));
      return after;
    },
    write: () => writeRoom(model.session, before, after),
  });
}

interface RoomChange {
  draw(p: Point, isFree: boolean): Room;
  write(): void;
}

/** Walls are drawn and judged as they are dragged and written once, at the end: nobody else gets half-moved walls. */
function roomDrag(model: PlanModel, change: RoomChange): Drag {
  const finish = (): void => {
    model.draftRoom = null;
    model.session.setView({ draft: null });
    model.redraw('sheet', 'marks', 'checks', 'over');
  };
  return {
    to(p, { isFree }) {
      const room = change.draw(p, isFree);
      model.draftRoom = room;
      model.session.setView({ draft: { room } });
      model.redraw('sheet', 'over');
    },
    end() {
      change.write();
      finish();
    },
    cancel: finish,
  };
}

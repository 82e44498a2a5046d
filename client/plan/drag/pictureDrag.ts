import type { Point } from '#model/geometry/vec.ts';
import { pictureOf } from '#model/schema/picture.ts';
import type { PlanModel } from '../planModel.ts';
import type { Drag } from './drag.ts';

/** Slides the picture under the drawing. It is written when it is let go, as one step. */
export function pictureDrag(model: PlanModel, grabbed: Point): Drag | null {
  const before = pictureOf(model.session.classroom().room.picture);
  if (!before?.shown) return null;
  return {
    to(p) {
      model.draftPicture = { ...before, x: before.x + p.x - grabbed.x, y: before.y + p.y - grabbed.y };
      model.redraw('sheet');
    },
    end() {
      const moved = model.draftPicture;
      model.draftPicture = null;
      const now = pictureOf(model.session.classroom().room.picture);
      if (moved && now) model.session.commands.changeRoom({ picture: { ...now, x: moved.x, y: moved.y } });
      model.redraw('sheet');
    },
    cancel() {
      model.draftPicture = null;
      model.redraw('sheet');
    },
  };
}

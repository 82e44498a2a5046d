import { add, distance, type Point, scale, sub, turn } from '#model/geometry/vec.ts';
import type { Picture } from '#model/schema/picture.ts';

/** How a line of the picture is to lie on the sheet. */
export type Lie = 'as it lies' | 'level' | 'upright';
export type Place = Pick<Picture, 'x' | 'y' | 'scale' | 'rotation'>;

/** Picture middle and scale at which the whole picture covers a box of the plan, mm. */
export function placeOver(
  size: { readonly width: number; readonly height: number },
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
): Place {
  const wide = Math.max(1000, box.maxX - box.minX);
  const high = Math.max(1000, box.maxY - box.minY);
  return {
    x: (box.minX + box.maxX) / 2,
    y: (box.minY + box.maxY) / 2,
    scale: Math.max(wide / size.width, high / size.height),
    rotation: 0,
  };
}

/**
 * The picture so scaled that two points of the plan (mm) lie `long` (mm) apart, and turned so that the line between them lies level
 * or upright, whichever way round is nearer. The first point stays where it is. Null: the points are one.
 */
export function scaledByTwoPoints(picture: Place, from: Point, to: Point, long: number, lie: Lie): Place | null {
  const apart = distance(from, to);
  if (apart < 1e-6) return null;
  const run = sub(to, from);
  const heading = (Math.atan2(run.y, run.x) * 180) / Math.PI;
  const wanted =
    lie === 'as it lies' ? heading : lie === 'level' ? 180 * Math.round(heading / 180) : 180 * Math.round((heading - 90) / 180) + 90;
  const by = wanted - heading;
  const times = long / apart;
  const middle = add(from, turn(scale(sub(picture, from), times), by));
  return { x: middle.x, y: middle.y, scale: picture.scale * times, rotation: (((picture.rotation + by) % 360) + 360) % 360 };
}

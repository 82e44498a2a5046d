import type { Picture } from '#model/schema/picture.ts';
import { at, type Pen } from './pen.ts';

const images = new Map<string, HTMLImageElement>();

/** The image of a picture, once it is there; until then null, and `then` is called when it is. */
function imageOf(source: string, then: () => void): HTMLImageElement | null {
  const known = images.get(source);
  if (known) return known.complete && known.naturalWidth > 0 ? known : null;
  // One picture a room: what is no longer shown is let go.
  images.clear();
  const image = new Image();
  images.set(source, image);
  image.onload = then;
  image.src = source;
  return null;
}

/** The plan that is traced, under everything else: floor and walls shine through its white. */
export function drawPicture(pen: Pen, picture: Picture, whenLoaded: () => void): void {
  if (!picture.shown || picture.fade >= 100) return;
  const image = imageOf(picture.source, whenLoaded);
  if (!image) return;
  const { ctx, view } = pen;
  const middle = at(pen, picture);
  const k = picture.scale * view.k;
  ctx.save();
  ctx.translate(middle.x, middle.y);
  ctx.rotate((picture.rotation * Math.PI) / 180);
  ctx.globalAlpha = 1 - picture.fade / 100;
  ctx.globalCompositeOperation = 'multiply';
  ctx.drawImage(image, (-picture.width * k) / 2, (-picture.height * k) / 2, picture.width * k, picture.height * k);
  ctx.restore();
}

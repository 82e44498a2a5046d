import { colours, lines } from '#client/styles/tokens.ts';
import { contains } from '#model/geometry/polygon.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneOpening, SceneRoom } from '#model/scene/types.ts';
import { hingesAtA } from '../hinge.ts';
import { wallPx } from './drawRoom.ts';
import { at, fill, line, type Pen, path, stroke, widthOf, write } from './pen.ts';
import { boxAround, boxOfWords, cornersOfBox, firstClear, type WordBox, type WordPlace } from './wordPlace.ts';

/** The gap in the wall, and in it a leaf with its swing, a window's three lines, or nothing. */
export function drawOpening(pen: Pen, opening: SceneOpening): void {
  const a = at(pen, opening.a);
  const b = at(pen, opening.b);
  const thick = wallPx(pen);
  const outward = scale(opening.wall.inward, -1);
  const out = scale(outward, thick);
  // Half a pixel over on both faces, or the wall shows as a hair.
  path(pen, [
    sub(a, scale(outward, 0.5)),
    sub(b, scale(outward, 0.5)),
    add(b, scale(outward, thick + 0.5)),
    add(a, scale(outward, thick + 0.5)),
  ]);
  fill(pen, opening.raw.kind === 'window' ? colours.leaf : colours.paper);
  line(pen, a, add(a, out), { width: lines.outline });
  line(pen, b, add(b, out), { width: lines.outline });
  if (opening.raw.kind === 'window') drawWindow(pen, a, b, out);
  if (opening.raw.kind === 'door') drawDoor(pen, opening, a, b, outward, thick);
  if (opening.raw.kind === 'passage') line(pen, a, b, { colour: colours.pencil, width: 0.9, dash: [2.5, 2.5] });
}

function drawWindow(pen: Pen, a: Point, b: Point, out: Point): void {
  for (const share of [0, 0.5, 1]) {
    const shift = scale(out, share);
    line(pen, add(a, shift), add(b, shift), { width: lines.outline });
  }
}

function drawDoor(pen: Pen, opening: SceneOpening, a: Point, b: Point, outward: Point, thick: number): void {
  const { swing } = opening.raw;
  if (swing === 'none') {
    line(pen, lerp(a, add(a, scale(outward, thick)), 0.5), lerp(b, add(b, scale(outward, thick)), 0.5), { width: lines.outline });
    return;
  }
  if (swing === 'sliding') {
    const share = (t: number, p: Point): Point => add(p, scale(outward, thick * t));
    line(pen, share(0.35, a), share(0.35, lerp(a, b, 0.58)), { width: 2 });
    line(pen, share(0.65, lerp(a, b, 0.42)), share(0.65, b), { width: 2 });
    return;
  }
  const swingsIn = swing.startsWith('in-');
  const hingeAtA = hingesAtA(opening);
  const face = swingsIn ? { x: 0, y: 0 } : scale(outward, thick);
  const hinge = add(hingeAtA ? a : b, face);
  const latch = add(hingeAtA ? b : a, face);
  const wide = distance(hinge, latch);
  const open = add(hinge, scale(swingsIn ? scale(outward, -1) : outward, wide));
  line(pen, hinge, open, { width: 1.6 });
  const from = Math.atan2(latch.y - hinge.y, latch.x - hinge.x);
  const to = Math.atan2(open.y - hinge.y, open.x - hinge.x);
  const turned = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  pen.ctx.beginPath();
  pen.ctx.arc(hinge.x, hinge.y, wide, from, to, turned < 0);
  stroke(pen, { width: lines.swing });
}

/** Names of doors and windows outside the walls, where they lie over no leaf, no other name and not over the room. */
export function drawOpeningNames(pen: Pen, { outline, openings }: Pick<SceneRoom, 'outline' | 'openings'>): void {
  const taken = openings.map((opening) => leafBox(pen, opening));
  const room = outline.map((p) => at(pen, p));
  const isOutside = (box: WordBox): boolean =>
    !cornersOfBox(box).some((p) => contains(room, p)) && !room.some((p) => p.x > box.x0 && p.x < box.x1 && p.y > box.y0 && p.y < box.y1);
  for (const opening of openings) {
    const name = opening.raw.name?.trim();
    if (!name) continue;
    const { wall } = opening;
    const whole = widthOf(pen, name, NAME);
    const isUpright = Math.abs(wall.inward.x) > 0.5;
    const long = distance(at(pen, wall.a), at(pen, wall.b));
    const style = { size: NAME, isItalic: true, isTitle: true, colour: colours.pencilText };
    if (Math.abs(wall.inward.x) > 0.9 && whole > BESIDE_STRING) {
      // Too long before the string beside the wall: along the wall, as on paper.
      const said = fitted(pen, name, long);
      const width = widthOf(pen, said, NAME);
      const place = firstClear(placesAlong(pen, opening, width), { width: NAME, size: width }, taken, isOutside);
      if (!place) continue;
      taken.push(boxOfWords(place, NAME, width));
      write(pen, said, place.where, { ...style, angle: -Math.PI / 2 });
      continue;
    }
    const said = isUpright ? name : fitted(pen, name, long);
    const width = widthOf(pen, said, NAME);
    const ends = [at(pen, wall.a).x, at(pen, wall.b).x];
    const [from, to] = [Math.min(...ends) + width / 2, Math.max(...ends) - width / 2];
    // A long one keeps within its wall, or it would run off the paper.
    const within = ({ where: { x, y }, align }: WordPlace): WordPlace => ({ where: { x: Math.min(to, Math.max(from, x)), y }, align });
    const places = namePlaces(pen, opening, width).map((place) => (!isUpright && whole > LONG_NAME ? within(place) : place));
    const place = firstClear(places, { width, size: NAME }, taken, isOutside);
    if (!place) continue;
    taken.push(boxOfWords(place, width, NAME));
    write(pen, said, place.where, { ...style, align: place.align });
  }
}

const NAME = 12;
/** px: a shorter one may stand out past the corner of its wall */
const LONG_NAME = 90;
/** px as measured upright, which is wider than written: so much of a name has room between an upright wall and its string (drawDimensions) */
const BESIDE_STRING = 44;

/** As many letters as have room, with a mark where it was cut: the list of doors has it whole. */
function fitted(pen: Pen, name: string, room: number): string {
  if (widthOf(pen, name, NAME) <= room) return name;
  const letters = [...name];
  while (letters.length > 1 && widthOf(pen, `${letters.join('')}…`, NAME) > room) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** Beside the opening, outside an upright wall and no farther along than it goes; else past its leaf. */
function placesAlong(pen: Pen, { a, b, wall }: SceneOpening, width: number): WordPlace[] {
  const middle = lerp(at(pen, a), at(pen, b), 0.5);
  const ends = [at(pen, wall.a).y, at(pen, wall.b).y];
  const [from, to] = [Math.min(...ends) + width / 2, Math.max(...ends) - width / 2];
  const y = Math.min(to, Math.max(from, middle.y));
  return [0, distance(at(pen, a), at(pen, b))].map((past) => ({
    where: { x: middle.x - Math.sign(wall.inward.x) * (wallPx(pen) + NAME / 2 + 3 + past), y },
    align: 'center',
  }));
}

/** Before the opening, else outside beside it along the wall, else past its leaf. */
function namePlaces(pen: Pen, { a: from, b: to, wall }: SceneOpening, width: number): WordPlace[] {
  const a = at(pen, from);
  const b = at(pen, to);
  const outward = scale(wall.inward, -1);
  const isSide = Math.abs(outward.x) > 0.5;
  const out = wallPx(pen) + (isSide ? 8 : 12);
  const align = outward.x > 0.5 ? 'left' : outward.x < -0.5 ? 'right' : 'center';
  const wide = distance(a, b);
  const along = unit(sub(b, a));
  const aside = wide / 2 + 4 + (isSide ? NAME / 2 : width / 2);
  const middle = lerp(a, b, 0.5);
  const place = (far: number, shift: number): WordPlace => ({ where: add(add(middle, scale(outward, far)), scale(along, shift)), align });
  return [place(out, 0), place(out, aside), place(out, -aside), place(out + wide, 0)];
}

/** px that the gap in the wall takes, with a leaf that swings out of the room. */
function leafBox(pen: Pen, { raw, a, b, wall }: SceneOpening): WordBox {
  const far = wallPx(pen) + (raw.swing.startsWith('out-') && raw.kind === 'door' ? distance(at(pen, a), at(pen, b)) : 0);
  const outward = scale(wall.inward, -far);
  return boxAround([at(pen, a), at(pen, b), add(at(pen, a), outward), add(at(pen, b), outward)]);
}

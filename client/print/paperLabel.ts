import { distance, sub } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { readable } from '../plan/draw/pen.ts';
import { type Mark, words } from './marks.ts';
import type { PaperPen } from './paperPen.ts';

/** mm: from as written where there is room to as small as can be read */
const SIZES = [2.8, 2.4, 2, 1.7] as const;

/**
 * The words of a thing, along its long side. Where they do not fit they are made smaller, then left out from the end;
 * the number always stands.
 */
export function labelOf(pen: PaperPen, body: SceneBody, text: string, weight: number, short = text.split(' ')[0] ?? ''): Mark[] {
  if (!text) return [];
  const isWide = body.width >= body.depth;
  const edge = isWide ? body.edges.front : body.edges.left;
  const [a, b] = [pen.at(edge.a), pen.at(edge.b)];
  const long = distance(a, b) - 1;
  const thin = (isWide ? body.depth : body.width) / pen.scale - 0.6;
  const along = sub(b, a);
  const angle = readable(along.x, along.y);
  const center = pen.at(body.center);
  for (const said of [text, short])
    for (const size of SIZES)
      if (pen.measure(said, size, weight) <= long && size <= thin)
        return [words(said, center.x, center.y, { size, weight, angle, align: 'middle', ground: 0.5 })];
  // A number is what lists speak of; the name of a small thing can be left out.
  return /\d/.test(short) ? [words(short, center.x, center.y, { size: 1.7, weight, angle, align: 'middle', ground: 0.2 })] : [];
}

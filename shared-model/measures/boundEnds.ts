import { closestOfParts } from '../geometry/closest.ts';
import { pointBefore } from '../geometry/frontLine.ts';
import { makePart, type Part } from '../geometry/parts.ts';
import { distance, type Point } from '../geometry/vec.ts';
import type { Bound } from './waysFronts.ts';

/** A place on an obstacle: its id (a wall: "wall:" and the corner it starts at) and the point, mm. */
export interface WayEnd extends Point {
  readonly id: string;
}

const kept = new WeakMap<Bound, readonly WayEnd[]>();

/** Both obstacles of the narrowest place, each with its point. Kept: several measures ask about the same bound. */
export function boundEnds(bound: Bound): readonly WayEnd[] {
  const before = kept.get(bound);
  if (before) return before;
  const ends = endsOf(bound);
  kept.set(bound, ends);
  return ends;
}

function endsOf(bound: Bound): WayEnd[] {
  switch (bound.by) {
    case 'gap': {
      const { gap, parts } = bound;
      const end = (index: number, x: number, y: number): WayEnd => ({ id: (parts[index] as Part).id, x, y });
      return [end(gap.i, gap.ax, gap.ay), end(gap.j, gap.bx, gap.by)];
    }
    case 'door': {
      const { opening } = bound.door;
      return [
        { id: opening.wall.id, ...opening.clearA },
        { id: opening.wall.id, ...opening.clearB },
      ];
    }
    case 'touch':
      return touchEnds(bound);
  }
}

/** Of the front's touching point and what else the disc touches, the two that lie farthest apart. */
function touchEnds({ line, disc, id, parts }: Extract<Bound, { by: 'touch' }>): WayEnd[] {
  const contacts: WayEnd[] = [{ id, ...pointBefore(line, disc.u, 0) }];
  const center = makePart('', [disc.center, disc.center]);
  const closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  const reach = disc.diameter / 2 + 0.01;
  // Counted loops: this runs for every front of every frame.
  for (let k = 0; k < parts.length; k++) {
    const part = parts[k] as Part;
    if (part.minX > disc.center.x + reach || part.maxX < disc.center.x - reach) continue;
    if (part.minY > disc.center.y + reach || part.maxY < disc.center.y - reach) continue;
    closestOfParts(center, part, closest);
    if (closest.distance <= reach) contacts.push({ id: part.id, x: closest.bx, y: closest.by });
  }
  let best: WayEnd[] = contacts.slice(0, 2);
  let widest = -1;
  for (let i = 0; i < contacts.length; i++) {
    for (let j = i + 1; j < contacts.length; j++) {
      const p = contacts[i] as WayEnd;
      const q = contacts[j] as WayEnd;
      const apart = distance(p, q);
      if (apart <= widest + 1e-6) continue;
      widest = apart;
      best = [p, q];
    }
  }
  return best;
}

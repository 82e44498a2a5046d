import { add, distance, lerp, type Point, scale, sub } from '#model/geometry/vec.ts';
import { buildRoom } from '#model/scene/room.ts';
import type { SceneOpening } from '#model/scene/types.ts';
import type { Room } from '#model/schema/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { cornersOf } from '../plan/box.ts';
import { hingesAtA } from '../plan/hinge.ts';
import type { Draft } from './draft.ts';
import { lengthOf, type Walk } from './walk.ts';

interface Props {
  readonly draft: Draft;
  readonly walk: Walk;
  /** The corners on the sheet, mm: of the walk as typed, or spread. */
  readonly points: readonly Point[];
  readonly isClosed: boolean;
  /** The room as it would be laid out; null: the walk has not come round. */
  readonly laid: Room | null;
  readonly current: string | null;
  /** Diagonals are asked for by the corners: they bear their numbers. */
  readonly hasCorners: boolean;
  readonly units: LengthUnits;
  /** Given the corner where the pressed wall begins. */
  readonly onWall: (corner: string) => void;
}

/** px of the picture's own sheet */
const SIZE = { width: 400, height: 300, margin: 56 } as const;

/** The walk as it grows, beside the rows. */
export function WalkPicture({ draft, walk, points, isClosed, laid, current, hasCorners, units, onWall }: Props) {
  const k = scaleOf(points);
  const place = placing(points, k);
  const path = points
    .map(place)
    .map(({ x, y }) => `${x},${y}`)
    .join(' ');
  const corner = new Map(walk.walls.map(({ corner: id }, i) => [id, points[i]]));
  const [first, last] = [points[0], points.at(-1)];
  const gap = !isClosed && walk.isRound && first && last && distance(first, last) > 1 ? [first, last] : null;
  const shape = laid && buildRoom(laid);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: by keys the wall is chosen beside it, by its row or from the list of walls
    <svg
      onClick={({ target }) => target instanceof SVGElement && target.dataset.wall && onWall(target.dataset.wall)}
      className="walk-picture"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={`The walk so far: ${walk.chain.length - 1} walls`}
    >
      {points.length < 2 && (
        <text x={SIZE.width / 2} y={SIZE.height / 2} className="walk-hint">
          The walls come here as you type them.
        </text>
      )}
      {isClosed ? <polygon points={path} className="walk-walls" /> : <polyline points={path} className="walk-walls" />}
      {laid?.fixtures.map((fixture) => (
        <polygon
          key={fixture.id}
          className="walk-fixture"
          points={cornersOf(fixture)
            .map(place)
            .map(({ x, y }) => `${x},${y}`)
            .join(' ')}
        />
      ))}
      {draft.diagonals.map(({ key, from, to, length }) => {
        const [a, b] = [corner.get(from), corner.get(to)];
        return a && b && length !== null ? <Line key={key} from={place(a)} to={place(b)} className="walk-diagonal" /> : null;
      })}
      {gap && <Line from={place(gap[0] as Point)} to={place(gap[1] as Point)} className="walk-gap" />}
      {walk.walls.map((wall, i) => {
        const [a, b] = [points[i], points[isClosed ? (i + 1) % walk.walls.length : i + 1]];
        if (!a || !b) return null;
        const isCurrent = wall.corner === current;
        return (
          <g key={wall.corner}>
            {isCurrent && <Line from={place(a)} to={place(b)} className="walk-current" />}
            <WallWords a={place(a)} b={place(b)} text={`${i + 1}`} figure={isCurrent ? sayLength(lengthOf(wall) ?? 0, units) : null} />
          </g>
        );
      })}
      {shape?.openings.map(({ id, a, b, raw }) => (
        <Line key={id} from={place(a)} to={place(b)} className={`walk-opening ${raw.kind}`} />
      ))}
      {shape?.openings.map((opening) => {
        const leaf = leafOf(opening);
        if (!leaf) return null;
        const [hinge, latch, open] = [place(leaf.hinge), place(leaf.latch), place(leaf.open)];
        const r = Math.round(distance(hinge, latch) * 10) / 10;
        const turn = (latch.x - hinge.x) * (open.y - hinge.y) - (latch.y - hinge.y) * (open.x - hinge.x) > 0 ? 1 : 0;
        const path = `M ${hinge.x} ${hinge.y} L ${open.x} ${open.y} M ${latch.x} ${latch.y} A ${r} ${r} 0 0 ${turn} ${open.x} ${open.y}`;
        return <path key={`leaf ${opening.id}`} d={path} className="walk-leaf" />;
      })}
      {first && points.length > 1 && <circle {...centre(place(first))} r={5} className="walk-first" />}
      {hasCorners &&
        points.length > 1 &&
        walk.walls.map(({ corner: id }, i) => {
          const where = points[i];
          if (!where) return null;
          const { x, y } = place(where);
          return (
            <g key={`corner ${id}`} className="walk-corner">
              <circle cx={x} cy={y} r={8.5} />
              <text x={x} y={y}>
                {i + 1}
              </text>
            </g>
          );
        })}
      {walk.walls.map(({ corner: id }, i) => {
        const [a, b] = [points[i], points[isClosed ? (i + 1) % walk.walls.length : i + 1]];
        return a && b ? <Line key={`press ${id}`} from={place(a)} to={place(b)} className="walk-press" wall={id} /> : null;
      })}
    </svg>
  );
}

/** A hinged leaf, mm: where it hangs, where it shuts and where it stands open; null: it slides or there is none. */
function leafOf(opening: SceneOpening): { hinge: Point; latch: Point; open: Point } | null {
  const { a, b, raw, wall } = opening;
  const isIn = raw.swing.startsWith('in-');
  if (raw.kind !== 'door' || !(isIn || raw.swing.startsWith('out-'))) return null;
  const isAtA = hingesAtA(opening);
  const [hinge, latch] = isAtA ? [a, b] : [b, a];
  return { hinge, latch, open: add(hinge, scale(wall.inward, (isIn ? 1 : -1) * distance(a, b))) };
}

const centre = ({ x, y }: Point) => ({ cx: x, cy: y });

function Line({ from, to, className, wall }: { from: Point; to: Point; className: string; wall?: string }) {
  return <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} className={className} data-wall={wall} />;
}

/** The wall's number outside it; the walls run clockwise, so that is to their left. */
function WallWords({ a, b, text, figure }: { a: Point; b: Point; text: string; figure: string | null }) {
  const middle = lerp(a, b, 0.5);
  const run = sub(b, a);
  const long = Math.hypot(run.x, run.y) || 1;
  const out = { x: run.y / long, y: -run.x / long };
  return (
    <text
      x={middle.x + out.x * 13}
      y={middle.y + out.y * 13}
      textAnchor={out.x < -0.5 ? 'end' : out.x > 0.5 ? 'start' : 'middle'}
      className={figure ? 'walk-number current' : 'walk-number'}
    >
      {figure ? `${text}: ${figure}` : text}
    </text>
  );
}

function boxOf(points: readonly Point[]) {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

/** px a mm: the walk fills the picture, but a first wall does not fill it alone. */
function scaleOf(points: readonly Point[]): number {
  const { minX, maxX, minY, maxY } = boxOf(points);
  const wide = Math.max(maxX - minX, 3000);
  const high = Math.max(maxY - minY, 2000);
  return Math.min((SIZE.width - 2 * SIZE.margin) / wide, (SIZE.height - 2 * SIZE.margin) / high);
}

function placing(points: readonly Point[], k: number): (p: Point) => Point {
  const { minX, maxX, minY, maxY } = boxOf(points);
  const [midX, midY] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const px = (value: number): number => Math.round(value * 10) / 10;
  return ({ x, y }) => ({ x: px(SIZE.width / 2 + (x - midX) * k), y: px(SIZE.height / 2 + (y - midY) * k) });
}

import { useRef } from 'react';
import { boundingBox, type Polygon } from '#model/geometry/polygon.ts';
import type { CountedFloor } from '#model/measures/countedFloor.ts';
import type { Scene } from '#model/scene/types.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { useBoxSize } from '../front/useBoxSize.ts';

/** mm of wall drawn round the room */
const WALL = 180;

/** px: numbers are never smaller on the screen */
const NUMBER = 10.5;
/** px, as in places.css */
const MOST_HIGH = 300;

/** The room in small; floor that the rule in force does not count is hatched. */
export function SmallPlan({ scene, counted }: { scene: Scene; counted: CountedFloor | null }) {
  const { outline, openings } = scene.room;
  const box = boundingBox(outline);
  const width = box.maxX - box.minX + 2 * WALL;
  const height = box.maxY - box.minY + 2 * WALL;
  const frame = useRef<HTMLDivElement>(null);
  const size = useBoxSize(frame);
  // mm on the plan that come to lie NUMBER px high
  const letter = NUMBER / Math.max(0.001, Math.min(size.width / width, MOST_HIGH / height));
  const numbers = pieceNumbers(scene.classroom);
  const taken = (counted?.items ?? []).filter((item) => item.deducted > 0 && item.answer !== 'count');
  return (
    <div ref={frame}>
      <svg
        className="small-plan"
        viewBox={`${box.minX - WALL} ${box.minY - WALL} ${width} ${height}`}
        role="img"
        aria-label={`The room in small. Not counted: ${taken.map((item) => item.label).join(', ') || 'nothing'}.`}
      >
        <defs>
          <pattern id="not-counted-mm" width="90" height="90" patternUnits="userSpaceOnUse">
            <path d="M-20 110 110 -20" stroke="var(--must)" strokeWidth="12" />
          </pattern>
        </defs>
        <path d={ring(outline)} fill="var(--leaf)" stroke="var(--wall)" strokeWidth={2 * WALL} strokeLinejoin="miter" />
        <path d={ring(outline)} fill="var(--leaf)" />
        {openings.map(({ id, a, b, wall, raw }) => {
          const out = { x: -wall.inward.x * WALL, y: -wall.inward.y * WALL };
          return (
            <g key={id}>
              <path d={`M${a.x} ${a.y}L${b.x} ${b.y}L${b.x + out.x} ${b.y + out.y}L${a.x + out.x} ${a.y + out.y}Z`} fill="var(--leaf)" />
              {raw.kind === 'window' &&
                [0, 0.5, 1].map((t) => (
                  <path
                    key={t}
                    d={`M${a.x + out.x * t} ${a.y + out.y * t}L${b.x + out.x * t} ${b.y + out.y * t}`}
                    stroke="var(--wall)"
                    strokeWidth="18"
                  />
                ))}
            </g>
          );
        })}
        {scene.bodies.map((body) => (
          <path key={body.id} d={ring(body.footprint)} fill="var(--leaf)" stroke="var(--ink)" strokeWidth="24" />
        ))}
        {taken.map((item) => {
          const shape = shapeOf(item.id, scene);
          return shape && <path key={item.id} d={ring(shape)} fill="url(#not-counted-mm)" stroke="var(--must)" strokeWidth="10" />;
        })}
        {scene.bodies.map((body) =>
          body.piece?.kind === 'shelf' && size.width > 0 ? (
            <text
              key={body.id}
              x={body.center.x}
              y={body.center.y + letter * 0.35}
              textAnchor="middle"
              fontSize={letter}
              fontWeight="700"
              fill="var(--ink)"
            >
              {numbers.get(body.id)}
            </text>
          ) : null,
        )}
      </svg>
    </div>
  );
}

function shapeOf(id: string, scene: Scene): Polygon | null {
  const body = scene.bodyById.get(id);
  if (body) return body.footprint;
  const door = scene.room.openings.find((opening) => opening.id === id);
  if (door) return door.swingFloor;
  const zone = scene.classroom.room.zones.find((candidate) => candidate.id === id);
  return zone ? zone.outline.map(([x, y]) => ({ x, y })) : null;
}

const ring = (polygon: Polygon): string => `M${polygon.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;

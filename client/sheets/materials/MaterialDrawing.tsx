import type { Material } from '#model/schema/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { contentOf, contentStrokes } from '../../front/drawings.ts';
import { UNMEASURED } from '../../front/frontLayout.ts';

const ROOM = { width: 120, height: 84 };
const TRAY = 12;

/** The material from the front with its width below, as it stands on a board. */
export function MaterialDrawing({ material, units }: { material: Material; units: LengthUnits }) {
  const width = material.width ?? UNMEASURED.width;
  const height = Math.max(material.height ?? UNMEASURED.height, 40);
  const scale = Math.min(ROOM.width / width, ROOM.height / height);
  const w = width * scale;
  const h = Math.max(height * scale, TRAY + 14);
  const left = 12 + (ROOM.width - w) / 2;
  const top = 6 + ROOM.height - h;
  const base = 6 + ROOM.height;
  const isKnown = material.width !== null;
  return (
    <svg className="material-drawing" width="144" height="124" viewBox="0 0 144 124" aria-hidden="true" focusable="false">
      <g transform={`translate(${left + w * 0.08} ${top})`} fill="var(--leaf)" stroke="var(--ink)" strokeWidth="1">
        {contentStrokes(contentOf(material), w * 0.84, h - TRAY).map((stroke, i) => {
          const key = `${stroke.kind}${i}`;
          if (stroke.kind === 'line') return <polyline key={key} points={stroke.points.join(' ')} fill="none" />;
          if (stroke.kind === 'ring') return <circle key={key} cx={stroke.x} cy={stroke.y} r={Math.max(0.5, stroke.radius)} />;
          return <rect key={key} x={stroke.x} y={stroke.y} width={stroke.width} height={stroke.height} />;
        })}
      </g>
      <rect
        x={left}
        y={base - TRAY}
        width={w}
        height={TRAY}
        fill="var(--leaf)"
        stroke="var(--ink)"
        strokeWidth="1.2"
        strokeDasharray={isKnown ? undefined : '3 2.5'}
      />
      <path
        d={`M${left} ${base + 10}H${left + w}M${left - 3} ${base + 13}l6 -6M${left + w - 3} ${base + 13}l6 -6`}
        stroke="var(--ink)"
        strokeWidth="0.9"
      />
      <text x="72" y={base + 26} fontSize="11" textAnchor="middle" fill="var(--ink)">
        {material.width === null ? 'width not known' : sayLength(material.width, units)}
      </text>
    </svg>
  );
}

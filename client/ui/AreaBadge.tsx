import { areaCodeOf, areaNames, lettersOf } from './areas.ts';
import { hatchId } from './hatches.tsx';

/** Two letters on the hatch of the area. Empty for a thing without one. */
export function AreaBadge({ area }: { area: string }) {
  const code = areaCodeOf(area);
  const letters = lettersOf(area);
  if (!letters) return null;
  return (
    <svg className="area-badge" width="34" height="20" viewBox="0 0 34 20" role="img" aria-label={code ? areaNames[code] : area}>
      <rect x="0.6" y="0.6" width="32.8" height="18.8" fill="var(--leaf)" />
      {code && <rect x="0.6" y="0.6" width="32.8" height="18.8" fill={`url(#${hatchId(code)})`} />}
      <rect x="7" y="3.5" width="20" height="13" fill="var(--leaf)" />
      <rect x="0.6" y="0.6" width="32.8" height="18.8" fill="none" stroke="var(--ink)" strokeWidth="1.1" />
      <text x="17" y="14" textAnchor="middle" fontSize="11" fontWeight="700" fill="var(--ink)">
        {letters}
      </text>
    </svg>
  );
}

import { areaCode, areaLetters, areaName } from '#model/catalogue/areas.ts';
import { hatchId } from './hatches.tsx';

/** Two letters on the hatch of the area; nothing for a thing without one. */
export function AreaBadge({ area, strand = '' }: { area: string; strand?: string }) {
  if (area === '') return null;
  const code = areaCode(area, strand);
  return (
    <svg className="area-badge" width="34" height="20" viewBox="0 0 34 20" role="img" aria-label={code === 'AR' ? 'Art' : areaName(area)}>
      <rect x="0.6" y="0.6" width="32.8" height="18.8" fill="var(--leaf)" />
      {code && <rect x="0.6" y="0.6" width="32.8" height="18.8" fill={`url(#${hatchId(code)})`} />}
      <rect x="7" y="3.5" width="20" height="13" fill="var(--leaf)" />
      <rect x="0.6" y="0.6" width="32.8" height="18.8" fill="none" stroke="var(--ink)" strokeWidth="1.1" />
      <text x="17" y="14" textAnchor="middle" fontSize="11" fontWeight="700" fill="var(--ink)">
        {areaLetters(area, strand)}
      </text>
    </svg>
  );
}

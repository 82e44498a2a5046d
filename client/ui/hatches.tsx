import type { AreaCode } from '#model/catalogue/areas.ts';

/** Spacing of the hatch lines, px. */
const HATCH = 5;

/** id of the pattern in the page; null: no hatch. */
export const hatchId = (code: AreaCode): string => `hatch-${code}`;

/** PL level, SE upright, MA rising, LA falling, CU crossed, AR dots; and the two of the floor. Once in the page. */
export function HatchPatterns() {
  return (
    <svg width="0" height="0" aria-hidden="true" focusable="false" style={{ position: 'absolute' }}>
      <defs>
        {(Object.keys(hatchPaths) as AreaCode[]).map((code) => (
          <pattern key={code} id={hatchId(code)} width={HATCH} height={HATCH} patternUnits="userSpaceOnUse">
            {code === 'AR' ? (
              <circle cx="2.5" cy="2.5" r="0.8" fill="var(--pencil)" />
            ) : (
              <path d={hatchPaths[code]} stroke="var(--pencil)" strokeWidth="0.7" fill="none" />
            )}
          </pattern>
        ))}
        <pattern id="hatch-not-seen" width="9" height="9" patternUnits="userSpaceOnUse">
          <path d="M-1 10 10 -1" stroke="var(--pencil)" strokeWidth="0.7" />
        </pattern>
        <pattern id="hatch-not-counted" width="4" height="4" patternUnits="userSpaceOnUse">
          <path d="M-1 5 5 -1M-1 1 1 -1M3 5 5 3" stroke="var(--must)" strokeWidth="0.5" />
        </pattern>
      </defs>
    </svg>
  );
}

/** Lines of one 5 px tile. */
const hatchPaths: Readonly<Record<AreaCode, string>> = {
  PL: 'M0 2.5H5',
  SE: 'M2.5 0V5',
  MA: 'M-1 6 6 -1M-1 1 1 -1M4 6 6 4',
  LA: 'M-1 -1 6 6M-1 4 1 6M4 -1 6 1',
  CU: 'M0 2.5H5M2.5 0V5',
  AR: '',
};

import type { FrontLine } from './frontLines.ts';
import { DOUBLE, lineLook } from './LinesOfChild.tsx';

/** The lines of the smallest child in words: below a narrow drawing, else only heard. */
export function LineLegend({ lines, isShown }: { lines: readonly FrontLine[]; isShown: boolean }) {
  if (lines.length === 0) return null;
  return (
    <ul className={isShown ? 'front-legend' : 'only-heard'} aria-label="Lines of the smallest child">
      {lines.map((line) => (
        <li key={`${line.kind}${line.text}`}>
          <svg width="26" height="8" aria-hidden="true" focusable="false">
            <path
              d={line.isDouble ? `M0 2H26M0 ${2 + DOUBLE}H26` : 'M0 4H26'}
              stroke={lineLook[line.kind].colour}
              strokeWidth={lineLook[line.kind].width}
              strokeDasharray={lineLook[line.kind].dash.join(' ') || undefined}
            />
          </svg>{' '}
          {line.name} {line.text}
        </li>
      ))}
    </ul>
  );
}

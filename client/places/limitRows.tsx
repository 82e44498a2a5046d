import { sayYears } from '../text/sayAges.ts';

/** Where children stand on the staff, px. */
export interface Scale {
  readonly left: number;
  readonly perChild: number;
  readonly most: number;
}
const at = (scale: Scale, children: number): number => scale.left + children * scale.perChild;

/** One ring a child, its age in years inside; those only promised are dashed. */
export function ChildRow({ scale, ages, promised }: { scale: Scale; ages: readonly number[]; promised: number }) {
  const radius = Math.min(9, scale.perChild * 0.38);
  const isWritten = radius > 5;
  return (
    <>
      {Array.from({ length: Math.min(Math.max(promised, ages.length), scale.most) }, (_, i) => {
        const months = ages[i];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a child is its place on the staff
          <g key={i} transform={`translate(${at(scale, i + 0.5)} 0)`}>
            <circle
              r={radius}
              fill="var(--leaf)"
              stroke={months === undefined ? 'var(--pencil)' : 'var(--ink)'}
              strokeWidth="1.2"
              strokeDasharray={months === undefined ? '3 2.4' : undefined}
            />
            {months !== undefined && isWritten && (
              <text y="3.6" textAnchor="middle" className="chart-age">
                {sayYears(Math.floor(months / 12) * 12)}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

/** An arrow from nothing to the limit, with the reckoning on it. */
export function ArrowRow({ scale, to, words, isStrong }: { scale: Scale; to: number | null; words: string; isStrong: boolean }) {
  const ink = isStrong ? 'var(--ink)' : 'var(--pencil)';
  const wordsAt = at(scale, 0) + 14;
  if (to === null)
    return (
      <text x={wordsAt} y="4" className="chart-aside">
        {words}
      </text>
    );
  const end = at(scale, to);
  const wide = words.length * 6.1 + 12;
  const isInside = end - wordsAt > wide + 24;
  return (
    <>
      <path d={`M${at(scale, 0)} -8V8M${at(scale, 0)} 0H${at(scale, 0) + 10}`} stroke={ink} strokeWidth={isStrong ? 1.8 : 1.1} />
      <path d={isInside ? `M${wordsAt + wide} 0H${end}` : `M${at(scale, 0)} 0H${end}`} stroke={ink} strokeWidth={isStrong ? 1.8 : 1.1} />
      <path d={`M${end - 8} -5 ${end} 0 ${end - 8} 5M${end} -8V8`} fill="none" stroke={ink} strokeWidth={isStrong ? 1.8 : 1.1} />
      <text x={isInside ? wordsAt : end + 10} y="4" className="chart-aside">
        {words}
      </text>
    </>
  );
}

/** A box a seat, a dashed box a mat, a crossed one for each child without a place. */
export function WorkRow({ scale, seats, mats, wanted }: { scale: Scale; seats: number; mats: number; wanted: number }) {
  const side = Math.min(16, scale.perChild * 0.72);
  const total = Math.max(seats + mats, wanted);
  return (
    <>
      {Array.from({ length: Math.min(total, scale.most) }, (_, i) => {
        const kind = i < seats ? 'seat' : i < seats + mats ? 'mat' : 'none';
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is where it is drawn
          <g key={i} transform={`translate(${at(scale, i + 0.5) - side / 2} ${-side / 2})`}>
            <rect
              width={side}
              height={side}
              fill={kind === 'mat' ? 'var(--mat)' : 'var(--leaf)'}
              stroke={kind === 'none' ? 'var(--should)' : kind === 'mat' ? 'var(--pencil)' : 'var(--ink)'}
              strokeWidth="1.2"
              strokeDasharray={kind === 'mat' ? '4 2.6' : undefined}
            />
            {kind === 'seat' && <path d={`M0 ${side * 0.75}H${side}`} stroke="var(--ink)" strokeWidth="1" />}
            {kind === 'none' && (
              <path
                d={`M${side * 0.25} ${side * 0.25}L${side * 0.75} ${side * 0.75}M${side * 0.75} ${side * 0.25}L${side * 0.25} ${side * 0.75}`}
                stroke="var(--should)"
                strokeWidth="1.3"
              />
            )}
          </g>
        );
      })}
    </>
  );
}

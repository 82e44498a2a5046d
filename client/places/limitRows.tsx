import { sayYears } from '../text/sayAges.ts';
import { places } from '../ui/inPlace.ts';

/** Where children stand on the staff, px. */
export interface Scale {
  readonly perChild: number;
  /** children the staff is long */
  readonly most: number;
  /** children from one number on the staff to the next */
  readonly numberEvery: number;
  at(children: number): number;
}

/** px at either end, for half a number */
const END = 10;
/** px that a number takes */
const NUMBER = 26;

/** A staff for so many children over so many px. */
export function scaleFor(width: number, children: number): Scale {
  const most = Math.max(8, Math.ceil(children / 2) * 2 + 2);
  const perChild = Math.max(1, width - 2 * END) / most;
  const numberEvery = [2, 5, 10, 20, 50, 100].find((every) => every * perChild >= NUMBER) ?? 200;
  return { perChild, most, numberEvery, at: (n) => END + n * perChild };
}

/** One ring a child, its age in years inside; those only promised are dashed. */
export function ChildRow({ scale, ages, promised }: { scale: Scale; ages: readonly number[]; promised: number }) {
  const radius = Math.min(9, scale.perChild * 0.38);
  // A figure in a smaller ring could not be read; the groups' ages are in the class's own words.
  const isWritten = radius >= 6;
  return (
    <>
      {places(Math.min(Math.max(promised, ages.length), scale.most)).map((i) => {
        const months = ages[i];
        return (
          <g key={i} transform={`translate(${scale.at(i + 0.5)} 0)`}>
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

/** An arrow from nothing to the limit; two heads where it goes on beyond the staff. */
export function ArrowRow({ scale, to, isStrong }: { scale: Scale; to: number | null; isStrong: boolean }) {
  if (to === null) return null;
  const start = scale.at(0);
  const isBeyond = to > scale.most;
  const end = scale.at(Math.min(to, scale.most));
  const wing = Math.min(8, end - start);
  const stop = isBeyond ? `M${end - wing - 7} -5 ${end - 7} 0 ${end - wing - 7} 5` : `M${end} -8V8`;
  return (
    <path
      d={`M${start} -8V8M${start} 0H${end}M${end - wing} -5 ${end} 0 ${end - wing} 5${stop}`}
      fill="none"
      stroke={isStrong ? 'var(--ink)' : 'var(--pencil)'}
      strokeWidth={isStrong ? 1.8 : 1.1}
    />
  );
}

/** A box a seat, a dashed box a mat, a crossed one for each child without a place. */
export function WorkRow({ scale, seats, mats, wanted }: { scale: Scale; seats: number; mats: number; wanted: number }) {
  const side = Math.min(16, scale.perChild * 0.72);
  const total = Math.max(seats + mats, wanted);
  return (
    <>
      {places(Math.min(total, scale.most)).map((i) => {
        const kind = i < seats ? 'seat' : i < seats + mats ? 'mat' : 'none';
        return (
          <g key={i} transform={`translate(${scale.at(i + 0.5) - side / 2} ${-side / 2})`}>
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

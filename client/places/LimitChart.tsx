import { type ReactNode, useRef } from 'react';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { useBoxSize } from '../front/useBoxSize.ts';
import { useClassroom, useReportOf, useUnits } from '../session/hooks.ts';
import { places } from '../ui/inPlace.ts';
import { ArrowRow, ChildRow, type Scale, scaleFor, WorkRow } from './limitRows.tsx';
import { type LimitRow, limitRowsOf } from './limitRowsOf.ts';
import { matsOf, type PlacesLine } from './placesLine.ts';
import { laterEntries } from './yearSteps.ts';

interface Props {
  readonly line: PlacesLine;
  readonly inForce: FloorPlaces | null;
  readonly other: FloorPlaces | null;
}

/** px of a strip: half above and half below the line it is drawn on */
const STRIP = 30;
/** The staff is no longer than this many times the children. */
const BEYOND = 1.3;

/** A staff of children; each line is one way of asking how many. Drawn px for px, so that its words keep their size. */
export function LimitChart({ line, inForce, other }: Props) {
  const { children } = useClassroom();
  const units = useUnits();
  const mats = useReportOf(matsOf);
  const staff = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(staff);
  const byAge = [...children.groups].sort((p, q) => p.fromMonths - q.fromMonths);
  const ages = byAge.flatMap(({ fromMonths, count }) => Array.from({ length: Math.min(count, 200) }, () => fromMonths));
  const promised = Math.max(line.enrolled, ...laterEntries(line.year, new Date()).map((entry) => entry.children));
  const counts = [promised, line.byArea, line.byWork, line.byAdults, line.byGroup, other?.byArea ?? null].filter((n) => n !== null);
  // A limit far beyond the children would make them too small to read; its figure stands beside it.
  const scale = scaleFor(width, Math.min(Math.max(...counts), Math.ceil(promised * BEYOND)));

  function drawingOf(row: LimitRow): ReactNode {
    switch (row.kind) {
      case 'children':
        return <ChildRow scale={scale} ages={ages} promised={promised} />;
      case 'work':
        return <WorkRow scale={scale} seats={(line.byWork ?? 0) - mats} mats={mats} wanted={line.enrolled} />;
      default:
        return <ArrowRow scale={scale} to={row.value} isStrong={row.kind === 'limit'} />;
    }
  }

  return (
    <div className="limit-chart">
      <div className="limit-row limit-staff" aria-hidden="true">
        <span />
        <div ref={staff} className="limit-strip">
          <Staff scale={scale} now={line.enrolled} />
        </div>
        <span />
      </div>
      <ul aria-label="Each way of asking how many">
        {limitRowsOf({ line, inForce, other, units, ages }).map((row) => (
          <li key={row.title} className="limit-row">
            <div className="limit-words">
              <b className="limit-title">{row.title}</b>
              <span className="aside">{row.sub}</span>
            </div>
            {row.words !== '' && <span className="aside limit-reckoning">{row.words}</span>}
            <div className="limit-strip" aria-hidden="true">
              <svg height={STRIP} width="100%" role="presentation">
                <g transform={`translate(0 ${STRIP / 2})`}>
                  {promised > line.enrolled && <path d={`M${scale.at(promised)} -90V90`} stroke="var(--pencil)" strokeDasharray="5 4" />}
                  <path d={`M${scale.at(line.enrolled)} -90V90`} stroke="var(--blue)" strokeWidth="1.6" />
                  {drawingOf(row)}
                </g>
              </svg>
            </div>
            <b className={row.isShort ? 'limit-figure short' : 'limit-figure'}>{row.value ?? '–'}</b>
          </li>
        ))}
      </ul>
      <p className="limit-key">
        <LineKey colour="var(--blue)" /> <b>now {line.enrolled}</b>
        {promised > line.enrolled && (
          <>
            {' '}
            <LineKey colour="var(--pencil)" dash="5 4" /> <span className="aside">promised {promised}</span>
          </>
        )}
      </p>
    </div>
  );
}

function LineKey({ colour, dash }: { colour: string; dash?: string }) {
  return (
    <svg width="22" height="8" aria-hidden="true" focusable="false">
      <path d="M0 4H22" stroke={colour} strokeWidth="1.6" strokeDasharray={dash} />
    </svg>
  );
}

/** Bars of one child, numbered as often as there is room. */
function Staff({ scale, now }: { scale: Scale; now: number }) {
  return (
    <svg height="30" width="100%" role="presentation">
      {places(scale.most).map((n) => (
        <rect
          key={n}
          x={scale.at(n)}
          y={18}
          width={scale.perChild}
          height={8}
          fill={n % 2 === 0 ? 'var(--ink)' : 'var(--leaf)'}
          stroke="var(--ink)"
          strokeWidth="0.9"
        />
      ))}
      {Array.from({ length: Math.floor(scale.most / scale.numberEvery) + 1 }, (_, i) => i * scale.numberEvery).map((n) => (
        <text key={n} x={scale.at(n)} y={12} className="chart-aside" textAnchor="middle">
          {n}
        </text>
      ))}
      <path d={`M${scale.at(now)} 18V40`} stroke="var(--blue)" strokeWidth="1.6" />
    </svg>
  );
}

import { useRef } from 'react';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { useBoxSize } from '../front/useBoxSize.ts';
import { useClassroom } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { inPlace } from '../ui/inPlace.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { PlacesLine } from './placesLine.ts';
import { sayYear } from './sayYear.ts';
import { monthsOf, wordsBeside, yearOf } from './yearSteps.ts';

/** px; narrower is not drawn */
const LEAST = 240;
const HEIGHT = 300;
const LEFT = 34;
const BOTTOM = 26;

/** Enrolment over the year as steps, against what the floor takes and the places to work. */
export function YearLine({ line }: { line: PlacesLine }) {
  const classroom = useClassroom();
  const dialogs = useFrameDialogs();
  return (
    <div className="year-line">
      <header className="panel-head">
        <h2>Through the year</h2>
        <span className="aside">
          entered <LineKey /> promised <LineKey isDashed /> now <PointKey />
        </span>
      </header>
      {classroom.enrolment.length === 0 && (
        <p className="question-answer">
          <span>No dates are entered: only the children now are known.</span>
          <MayChange>
            <TextLink onPress={() => dialogs.open('class')}>Enter who comes when</TextLink>
          </MayChange>
        </p>
      )}
      <Steps line={line} />
    </div>
  );
}

function Steps({ line }: { line: PlacesLine }) {
  const box = useRef<HTMLElement>(null);
  const wide = Math.max(LEAST, useBoxSize(box).width);
  const year = yearOf(line, new Date());
  const limits = [
    { text: `floor takes ${line.byArea}`, value: line.byArea, className: 'floor' },
    { text: `places to work ${line.byWork}`, value: line.byWork, className: 'work' },
  ].filter((limit) => limit.value !== null) as { text: string; value: number; className: string }[];
  const all = [line.enrolled, ...year.steps.map((step) => step.children), ...limits.map((limit) => limit.value)];
  const least = Math.max(0, Math.floor((Math.min(...all) - 3) / 2) * 2);
  const most = Math.ceil((Math.max(...all) + 2) / 2) * 2;
  const span = year.end.getTime() - year.start.getTime();
  const x = (date: Date) => LEFT + (Math.max(0, date.getTime() - year.start.getTime()) / span) * (wide - LEFT - 6);
  const y = (children: number) => 8 + (1 - (children - least) / (most - least)) * (HEIGHT - BOTTOM - 8);
  const ends = (index: number) => year.steps[index + 1]?.from ?? year.end;
  const tickEvery = Math.max(2, Math.ceil((most - least) / 8 / 2) * 2);
  const months = monthsOf(year);
  const monthEvery = Math.ceil(months.length / Math.max(1, Math.floor((wide - LEFT) / 36)));

  return (
    <figure ref={box}>
      <svg width={wide} height={HEIGHT} role="img" aria-label="Enrolment through the year; the same in words below">
        <path d={`M${LEFT} 8V${HEIGHT - BOTTOM}H${wide - 6}`} fill="none" stroke="var(--pencil)" />
        {Array.from({ length: Math.floor((most - least) / tickEvery) + 1 }, (_, i) => least + i * tickEvery).map((n) => (
          <g key={n}>
            <path d={`M${LEFT - 5} ${y(n)}H${LEFT}`} stroke="var(--pencil)" />
            <text x={LEFT - 9} y={y(n) + 4} textAnchor="end" className="chart-aside">
              {n}
            </text>
          </g>
        ))}
        {months.map((month, i) => (
          <g key={month.getTime()}>
            <path d={`M${x(month)} ${HEIGHT - BOTTOM}v4`} stroke="var(--pencil)" />
            {i % monthEvery === 0 && x(month) < wide - 26 && (
              <text x={x(month) + 2} y={HEIGHT - 8} className="chart-aside">
                {month.toLocaleDateString('en-GB', { month: 'short' })}
              </text>
            )}
          </g>
        ))}
        {inPlace(year.steps).map(({ place: i, entry: step }) => {
          const { byArea } = step;
          if (byArea === null || step.children <= byArea) return null;
          return (
            <rect
              key={i}
              x={x(step.from)}
              y={y(step.children)}
              width={Math.max(0, x(ends(i)) - x(step.from))}
              height={y(Math.max(byArea, least)) - y(step.children)}
              fill="url(#hatch-not-counted)"
            />
          );
        })}
        {limits.map((limit) => (
          <g key={limit.text} className={`limit ${limit.className}`}>
            <path d={`M${LEFT} ${y(limit.value)}H${wide - 6}`} />
          </g>
        ))}
        {inPlace(year.steps).map(({ place: i, entry: step }) => {
          const before = year.steps[i - 1];
          const rise = before ? `M${x(step.from)} ${y(before.children)}V${y(step.children)}` : `M${x(step.from)} ${y(step.children)}`;
          return (
            <path
              key={i}
              d={`${rise}H${x(ends(i))}`}
              fill="none"
              stroke="var(--blue)"
              strokeWidth="2"
              strokeDasharray={step.kind === 'promised' ? '4 3' : undefined}
            />
          );
        })}
        {limits.map((limit) => {
          const isAtStart = limit.className === 'floor';
          const beside = (isAtStart ? year.steps[0] : year.steps.at(-1))?.children;
          const lines = [
            ...limits.filter((other) => other !== limit).map((other) => other.value),
            ...(beside === undefined ? [] : [beside]),
          ];
          return (
            <g key={limit.text} className={`limit ${limit.className}`}>
              <text
                x={isAtStart ? LEFT + 6 : wide - 8}
                y={wordsBeside(y(limit.value), lines.map(y))}
                textAnchor={isAtStart ? 'start' : 'end'}
                paintOrder="stroke"
                stroke="var(--paper)"
                strokeWidth="3"
              >
                {limit.text}
              </text>
            </g>
          );
        })}
        <circle cx={x(year.today)} cy={y(line.enrolled)} r="4" fill="var(--leaf)" stroke="var(--blue)" strokeWidth="1.6" />
        <text x={x(year.today)} y={y(line.enrolled) - 10} textAnchor="middle" className="chart-now">
          now {line.enrolled}
        </text>
      </svg>
      <figcaption className="year-words">{sayYear(year, line)}</figcaption>
    </figure>
  );
}

function LineKey({ isDashed = false }: { isDashed?: boolean }) {
  return (
    <svg width="24" height="6" aria-hidden="true" focusable="false">
      <path d="M0 3H24" stroke="var(--blue)" strokeWidth="2" strokeDasharray={isDashed ? '4 3' : undefined} />
    </svg>
  );
}

function PointKey() {
  return (
    <svg width="12" height="12" aria-hidden="true" focusable="false">
      <circle cx="6" cy="6" r="4" fill="var(--leaf)" stroke="var(--blue)" strokeWidth="1.6" />
    </svg>
  );
}

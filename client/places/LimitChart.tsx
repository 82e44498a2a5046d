import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { sayArea } from '#model/units/sayLength.ts';
import { useClassroom, useReport, useUnits } from '../session/hooks.ts';
import { sayYears } from '../text/sayAges.ts';
import { ScrollPart } from '../ui/ScrollPart.tsx';
import { ArrowRow, ChildRow, type Scale, WorkRow } from './limitRows.tsx';
import { matsOf, type PlacesLine } from './placesLine.ts';

interface Props {
  readonly line: PlacesLine;
  readonly inForce: FloorPlaces | null;
  readonly other: FloorPlaces | null;
}
const LEFT = 236;
const WIDTH = 960;
const ROW = 52;
const TOP = 34;

/** A staff of children; each line is one way of asking how many. */
export function LimitChart({ line, inForce, other }: Props) {
  const classroom = useClassroom();
  const units = useUnits();
  const report = useReport();
  const ages = classroom.children.groups.flatMap(({ fromMonths, count }) => Array.from({ length: Math.min(count, 200) }, () => fromMonths));
  const promised = Math.max(line.enrolled, ...line.year.map((entry) => entry.children));
  const counts = [line.enrolled, promised, line.byArea, line.byWork, line.byAdults, line.byGroup, other?.byArea ?? null].filter(
    (n) => n !== null,
  );
  const most = Math.max(8, Math.ceil(Math.max(...counts) / 2) * 2 + 2);
  const scale: Scale = { left: LEFT, perChild: (WIDTH - LEFT - 70) / most, most };
  const at = (children: number) => scale.left + children * scale.perChild;

  const mats = matsOf(report);
  const rows = [
    {
      title: 'Children',
      sub: 'enrolled, by age in years',
      value: line.enrolled,
      isShort: false,
      draw: <ChildRow scale={scale} ages={ages} promised={promised} />,
    },
    ...(inForce
      ? [
          {
            title: 'Floor, rule in force',
            sub: inForce.need ? `${sayArea(inForce.need.perChild, units)} a child, ${inForce.rules.name}` : inForce.rules.name,
            value: line.byArea,
            isShort: line.byArea !== null && line.byArea < line.enrolled,
            draw: <ArrowRow scale={scale} to={line.byArea} words={floorWords(inForce, units)} isStrong />,
          },
        ]
      : []),
    ...(line.byWork === null
      ? []
      : [
          {
            title: 'Places to work',
            sub: 'seats and mats, class rule',
            value: line.byWork,
            isShort: line.byWork < line.enrolled,
            draw: <WorkRow scale={scale} seats={line.byWork - mats} mats={mats} wanted={line.enrolled} />,
          },
        ]),
    {
      title: 'Adults',
      sub: line.byAdults === null ? 'no adults, or no ratio in this rule' : 'children they may look after',
      value: line.byAdults,
      isShort: line.byAdults !== null && line.byAdults < line.enrolled,
      draw: (
        <ArrowRow scale={scale} to={line.byAdults} words={line.byAdults === null ? 'not told' : `${line.byAdults} children`} isStrong />
      ),
    },
    ...(line.byGroup === null
      ? []
      : [
          {
            title: 'Largest group',
            sub: 'allowed in one room',
            value: line.byGroup,
            isShort: line.byGroup < line.enrolled,
            draw: <ArrowRow scale={scale} to={line.byGroup} words={`${line.byGroup} children`} isStrong />,
          },
        ]),
    ...(other
      ? [
          {
            title: 'Floor, another rule',
            sub: other.rules.name,
            value: other.byArea,
            isShort: false,
            draw: <ArrowRow scale={scale} to={other.byArea} words={floorWords(other, units)} isStrong={false} />,
          },
        ]
      : []),
  ];
  const height = TOP + rows.length * ROW + 24;

  return (
    <ScrollPart className="limit-chart" label="Each way of asking how many">
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        role="img"
        aria-label="Each way of asking how many children, drawn on one scale; the same in words below"
      >
        {Array.from({ length: most }, (_, i) => i).map((n) => (
          <rect
            key={n}
            x={at(n)}
            y={18}
            width={scale.perChild}
            height={8}
            fill={n % 2 === 0 ? 'var(--ink)' : 'var(--leaf)'}
            stroke="var(--ink)"
            strokeWidth="0.9"
          />
        ))}
        {Array.from({ length: most / 2 + 1 }, (_, i) => i * 2).map((n) => (
          <text key={n} x={at(n)} y={12} className="chart-aside" textAnchor="middle">
            {most > 40 && n % 10 !== 0 ? '' : n}
          </text>
        ))}
        {rows.map((row, index) => {
          const y = TOP + index * ROW;
          return (
            <g key={row.title}>
              <text x={0} y={y + 22} className="chart-title">
                {row.title}
              </text>
              <text x={0} y={y + 38} className="chart-aside">
                {row.sub}
              </text>
              <g transform={`translate(0 ${y + 26})`}>{row.draw}</g>
              <text x={WIDTH} y={y + 33} textAnchor="end" className={row.isShort ? 'chart-figure short' : 'chart-figure'}>
                {row.value ?? '–'}
              </text>
              <path d={`M0 ${y + ROW}H${WIDTH}`} stroke="var(--rule)" />
            </g>
          );
        })}
        <path d={`M${at(line.enrolled)} 26V${height - 22}`} stroke="var(--blue)" strokeWidth="1.6" />
        <text x={at(line.enrolled) - 5} y={height - 10} textAnchor="end" className="chart-now">
          now {line.enrolled}
        </text>
        {promised > line.enrolled && (
          <>
            <path d={`M${at(promised)} 26V${height - 22}`} stroke="var(--pencil)" strokeDasharray="5 4" />
            <text x={at(promised) + 5} y={height - 10} className="chart-aside">
              promised {promised}
            </text>
          </>
        )}
      </svg>
      <p className="only-heard">
        {rows.map((row) => `${row.title} (${row.sub}): ${row.value ?? 'not told'}.`).join(' ')}{' '}
        {classroom.children.groups.map((group) => `${group.count} from ${sayYears(group.fromMonths)} years`).join(', ')}.
      </p>
    </ScrollPart>
  );
}

function floorWords(floor: FloorPlaces, units: 'metric' | 'imperial'): string {
  const { counted, need, byArea, byAreaMost, rules } = floor;
  if (!counted) return 'the walls cross: no floor to count';
  if (!need) return rules.missing[0] ?? 'no children entered';
  const area =
    counted.most > counted.least ? `${sayArea(counted.least, units)} to ${sayArea(counted.most, units)}` : sayArea(counted.least, units);
  const takes =
    byAreaMost !== null && byArea !== null && byAreaMost > byArea
      ? `${byArea} to ${byAreaMost}`
      : (counted.least / need.perChild).toFixed(1);
  return `${area} counted ÷ ${sayArea(need.perChild, units)} = ${takes}`;
}

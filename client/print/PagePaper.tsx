import { memo } from 'react';
import type { Point } from '#model/geometry/vec.ts';
import { cross, distance, sub } from '#model/geometry/vec.ts';
import { fonts } from '../styles/tokens.ts';
import { inPlace } from '../ui/inPlace.ts';
import { cornersOfWords, type Mark, type Measure, type Words } from './marks.ts';
import type { PrintPage } from './pageTypes.ts';

interface Props {
  readonly page: PrintPage;
  readonly measure: Measure;
  /** In words, for those who do not see it. */
  readonly label: string;
}

/** One page in mm: the same drawing small on the screen and in its true size on paper. */
export const PagePaper = memo(function PagePaper({ page, measure, label }: Props) {
  const { width, height } = page.sheet;
  return (
    <svg
      className="print-paper"
      viewBox={`0 0 ${width} ${height}`}
      width={`${width}mm`}
      height={`${height}mm`}
      role="img"
      aria-label={label}
    >
      {inPlace(page.marks).map(({ place, entry: mark }) => (
        <Drawn key={place} mark={mark} measure={measure} />
      ))}
    </svg>
  );
});

const fills = { none: 'none', white: '#fff', black: '#000' } as const;
/** To a hundredth of a hundredth of a mm: far finer than any printer. */
const say = (mm: number): string => String(Math.round(mm * 10_000) / 10_000);
const pathOf = (points: readonly Point[], isClosed: boolean): string =>
  `M${points.map((p) => `${say(p.x)} ${say(p.y)}`).join('L')}${isClosed ? 'Z' : ''}`;

function Drawn({ mark, measure }: { mark: Mark; measure: Measure }) {
  switch (mark.kind) {
    case 'line':
      return (
        <path
          d={pathOf(mark.points, mark.isClosed)}
          fill={fills[mark.fill]}
          {...strokeOf(mark.weight, mark.dash)}
          strokeLinejoin={mark.isMitred ? 'miter' : 'round'}
          strokeMiterlimit={6}
        />
      );
    case 'round':
      return (
        <circle
          cx={say(mark.center.x)}
          cy={say(mark.center.y)}
          r={say(mark.radius)}
          fill={fills[mark.fill]}
          {...strokeOf(mark.weight, mark.dash)}
        />
      );
    case 'arc': {
      const radius = say(distance(mark.center, mark.from));
      const turns = cross(sub(mark.from, mark.center), sub(mark.to, mark.center)) > 0 ? 1 : 0;
      const d = `M${say(mark.from.x)} ${say(mark.from.y)}A${radius} ${radius} 0 0 ${turns} ${say(mark.to.x)} ${say(mark.to.y)}`;
      return <path d={d} fill="none" {...strokeOf(mark.weight, [])} />;
    }
    case 'strokes':
      return <path d={mark.segments.map((segment) => pathOf(segment, false)).join('')} fill="none" {...strokeOf(mark.weight, [])} />;
    case 'words':
      return <Written mark={mark} measure={measure} />;
  }
}

const strokeOf = (weight: number, dash: readonly number[]) =>
  weight === 0 ? { stroke: 'none' } : { stroke: '#000', strokeWidth: weight, ...(dash.length > 0 && { strokeDasharray: dash.join(' ') }) };

function Written({ mark, measure }: { mark: Words; measure: Measure }) {
  const { text, at, size, weight, align, angle, isTitle, isItalic, ground } = mark;
  const turned = angle === 0 ? undefined : `rotate(${say((angle * 180) / Math.PI)} ${say(at.x)} ${say(at.y)})`;
  return (
    <>
      {ground > 0 && <path d={pathOf(grown(cornersOfWords(mark, measure), ground), true)} fill="#fff" />}
      <text
        x={say(at.x)}
        y={say(at.y + size * 0.35)}
        transform={turned}
        fontSize={size}
        fontWeight={weight}
        fontFamily={isTitle ? fonts.title : fonts.control}
        fontStyle={isItalic ? 'italic' : undefined}
        textAnchor={align}
        fill="#000"
      >
        {text}
      </text>
    </>
  );
}

/** A box a little wider along its first side; its height is that of the letters already. */
function grown(corners: readonly Point[], by: number): Point[] {
  const [a, b, c, d] = corners as [Point, Point, Point, Point];
  const long = distance(a, b) || 1;
  const step = { x: ((b.x - a.x) / long) * by, y: ((b.y - a.y) / long) * by };
  return [sub(a, step), { x: b.x + step.x, y: b.y + step.y }, { x: c.x + step.x, y: c.y + step.y }, sub(d, step)];
}

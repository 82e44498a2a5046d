import { Group, Line, Rect, Text } from 'react-konva';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { colours, fonts, lines } from '../styles/tokens.ts';
import { figure } from '../text/figure.ts';
import { ArrowLine } from './ArrowLine.tsx';
import { BOARD_MM, LEAST_BOARD } from './drawnSizes.ts';
import type { FrontLayout } from './frontLayout.ts';
import type { FrontView } from './frontView.ts';
import type { Standing } from './nameRoom.ts';

interface Props {
  readonly layout: FrontLayout;
  readonly view: FrontView;
  readonly units: LengthUnits;
  readonly isMirrored: boolean;
}

/** px below the floor */
const ARROW = 42;

/** Floor, side panels and boards. */
export function Carcass({ layout, view, isMirrored }: Omit<Props, 'units'>) {
  const { toX, toY, scale } = view;
  const left = toX(0);
  const right = toX(layout.width);
  const floor = toY(0);
  const panel = Math.max(LEAST_BOARD, layout.panel * scale);
  const thick = Math.max(LEAST_BOARD, BOARD_MM * scale);
  const hasTop = layout.boards.some((board) => board.level !== null && board.surface >= layout.height - 150);
  return (
    <Group listening={false}>
      <Rect x={left} y={toY(layout.height)} width={right - left} height={floor - toY(layout.height)} fill={colours.mat} />
      <Rect
        x={left}
        y={toY(layout.height)}
        width={panel}
        height={floor - toY(layout.height)}
        fill={colours.leaf}
        stroke={colours.ink}
        strokeWidth={1.1}
      />
      <Rect
        x={right - panel}
        y={toY(layout.height)}
        width={panel}
        height={floor - toY(layout.height)}
        fill={colours.leaf}
        stroke={colours.ink}
        strokeWidth={1.1}
      />
      {!hasTop && layout.piece.height !== null && (
        <Rect
          x={left}
          y={toY(layout.height)}
          width={right - left}
          height={thick}
          fill={colours.leaf}
          stroke={colours.ink}
          strokeWidth={1.1}
        />
      )}
      {layout.boards.map((board) =>
        board.level === null ? null : (
          <Rect
            key={board.key}
            x={toX(board.left)}
            y={toY(board.surface)}
            width={board.width * scale}
            height={thick}
            fill={colours.leaf}
            stroke={colours.ink}
            strokeWidth={1.1}
          />
        ),
      )}
      <Line points={[Math.max(0, left - 44), floor, Math.min(view.width, right + 44), floor]} stroke={colours.wall} strokeWidth={1.8} />
      {floorTicks(left, right).map((x) => (
        <Line key={x} points={[x, floor + 1, x - 6, floor + 7]} stroke={colours.pencil} strokeWidth={lines.grid} />
      ))}
      <ArrowLine
        points={isMirrored ? [right, floor + ARROW, left, floor + ARROW] : [left, floor + ARROW, right, floor + ARROW]}
        colour={colours.pencil}
        width={1}
        head={6}
      />
    </Group>
  );
}

/** mm along the shelf: the widest part of a free room that no mark stands in, so that its words are read whole. */
function widestBeside(left: number, width: number, surface: number, marks: readonly Standing[]): readonly [number, number] {
  const inIt = marks
    .filter((mark) => mark.surface === surface && mark.to > left && mark.from < left + width)
    .sort((p, q) => p.from - q.from);
  const starts = [left, ...inIt.map((mark) => mark.to)];
  const ends = [...inIt.map((mark) => mark.from), left + width];
  const parts = starts.map((from, i): readonly [number, number] => [from, ends[i] ?? from]);
  return parts.reduce((best, part) => (part[1] - part[0] > best[1] - best[0] ? part : best));
}

/** Free room written where there is any, on paper of its own: the child's lines pass behind it. */
export function FreeRooms({ layout, view: { toX, toY, scale }, units, marks }: Omit<Props, 'isMirrored'> & { marks: readonly Standing[] }) {
  return (
    <Group listening={false}>
      {layout.boards.flatMap((board) =>
        board.free.map((gap) => {
          const width = gap.width * scale;
          const text = `${figure(gap.width, units)} free`;
          if (width < text.length * 5.2) return null;
          const [from, to] = widestBeside(board.left + gap.x, gap.width, board.surface, marks);
          const wide = (to - from) * scale;
          const height = Math.min(16, Math.max(13, 60 * scale));
          return (
            <Group key={`${board.key}/${gap.x}`} x={toX(board.left + gap.x)} y={toY(board.surface) - height - 1}>
              <Rect
                x={3}
                width={Math.max(0, width - 6)}
                height={height}
                fill={colours.leaf}
                stroke={colours.pencil}
                strokeWidth={0.9}
                dash={[2.5, 2.5]}
              />
              <Text
                x={(from - board.left - gap.x) * scale}
                width={wide}
                visible={wide >= text.length * 5.2}
                height={height}
                align="center"
                verticalAlign="middle"
                text={text}
                fontSize={10}
                fontFamily={fonts.control}
                fill={colours.pencilText}
              />
            </Group>
          );
        }),
      )}
    </Group>
  );
}

function floorTicks(left: number, right: number): number[] {
  const ticks: number[] = [];
  for (let x = left - 36; x < right + 44; x += 9) ticks.push(Math.round(x));
  return ticks;
}

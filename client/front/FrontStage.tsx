import type Konva from 'konva';
import { useCallback, useMemo } from 'react';
import { Circle, Group, Layer, Line, Rect, Stage, Text } from 'react-konva';
import '../ui/drawingShapes.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { colours, fonts } from '../styles/tokens.ts';
import { ArrowLine } from './ArrowLine.tsx';
import { gapMark } from './belongs.ts';
import { Carcass, FreeRooms } from './Carcass.tsx';
import { LEAST_TRAY, MOST_LINES, NAME_LINE } from './drawnSizes.ts';
import type { FrontBoard, FrontLayout, FrontTray } from './frontLayout.ts';
import type { FrontLine } from './frontLines.ts';
import type { FrontView } from './frontView.ts';
import { LinesOfChild } from './LinesOfChild.tsx';
import { freeBesideNames, type Standing } from './nameRoom.ts';
import type { BelongsAt } from './orderMoves.ts';
import type { ReadingDirection } from './readingOrder.ts';
import { Staff } from './Staff.tsx';
import { TrayBox } from './TrayBox.tsx';
import { TrayNames } from './TrayNames.tsx';

interface Held {
  readonly tray: FrontTray;
  /** px of its left edge and its base on the drawing */
  readonly x: number;
  readonly y: number;
}

interface Props {
  readonly layout: FrontLayout;
  readonly view: FrontView;
  readonly lines: readonly FrontLine[];
  readonly moves: ReadonlyMap<string, BelongsAt | null>;
  readonly chosen: string | null;
  readonly marked: string | null;
  /** ids of the trays that a finding points at */
  readonly pointed: ReadonlySet<string>;
  readonly held: Held | null;
  readonly units: LengthUnits;
  readonly direction: ReadingDirection;
  readonly sayShelf: (piece: string) => string;
  readonly canEdit: boolean;
  readonly onTrayDown: (id: string, event: Konva.KonvaEventObject<PointerEvent>) => void;
  readonly onBoardDown: (key: string, event: Konva.KonvaEventObject<PointerEvent>) => void;
}

/** The drawing itself. It only shows and says what was pressed; deciding is the front's. */
export function FrontStage(props: Props) {
  const { layout, view, lines, moves, chosen, marked, pointed, held, units, direction, sayShelf, canEdit, onTrayDown, onBoardDown } = props;
  const isMirrored = direction === 'rtl';
  const marks = useMemo(() => marksOf(layout, view, moves, direction), [layout, view, moves, direction]);
  const lettered = useMemo(() => ({ ...layout, boards: freeBesideNames(layout.boards, view) }), [layout, view]);
  const asideOf = useCallback(
    (id: string): string => {
      const to = moves.get(id);
      return !to || (to.piece === layout.piece.id && to.side === layout.side) ? '' : `to ${sayShelf(to.piece)}`;
    },
    [moves, layout.piece.id, layout.side, sayShelf],
  );
  const top = Math.max(layout.top, ...lines.map((line) => line.z));
  return (
    <Stage width={view.width} height={view.height}>
      <Layer>
        <Staff {...{ view, top, isMirrored, units }} />
        <Carcass layout={layout} view={view} isMirrored={isMirrored} />
        <LinesOfChild lines={lines} view={view} shelf={layout.width} isMirrored={isMirrored} />
        <FreeRooms {...{ view, units }} layout={lettered} marks={held ? NONE : marks} />
        {layout.boards.flatMap((board) =>
          board.trays.map((tray) => (
            <TrayBox
              key={tray.id}
              tray={tray}
              x={view.toX(board.left + tray.x)}
              y={view.toY(board.surface)}
              scale={view.scale}
              look={held?.tray.id === tray.id ? 'left' : moves.has(tray.id) ? 'misplaced' : 'stands'}
              isChosen={chosen === tray.id || marked === tray.id || pointed.has(tray.id)}
              onDown={onTrayDown}
            />
          )),
        )}
        {!held && marks.map((mark) => <BelongsLine key={mark.id} mark={mark} />)}
        <TrayNames {...{ view, asideOf }} layout={lettered} chosen={held ? null : (chosen ?? marked)} marks={held ? NONE : marks} />
        {!held && marks.map((mark) => <BelongsNumber key={mark.id} mark={mark} />)}
        {canEdit &&
          layout.boards.map(
            (board) => board.level && <BoardHandle key={board.key} {...{ board, layout, view, isMirrored, onBoardDown }} />,
          )}
        {held && <TrayBox tray={held.tray} x={held.x} y={held.y} scale={view.scale} look="ghost" isChosen={false} />}
      </Layer>
    </Stage>
  );
}

const NONE: readonly Mark[] = [];

/** Where a misplaced tray belongs, on the drawing (px) and as something that names keep clear of. */
interface Mark extends Standing {
  readonly id: string;
  readonly text: string;
  readonly line: readonly number[];
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

function marksOf(
  layout: FrontLayout,
  view: FrontView,
  moves: ReadonlyMap<string, BelongsAt | null>,
  direction: ReadingDirection,
): readonly Mark[] {
  return layout.boards.flatMap((board) =>
    board.trays.flatMap((tray): Mark[] => {
      const mark = gapMark(layout, tray.id, moves, direction);
      if (!mark) return [];
      const from = { x: view.toX(board.left + tray.x + tray.width / 2), y: view.toY(board.surface + tray.height) - 4 };
      // A tray that moves away itself may still stand there: the number goes on top of it.
      const inTheWay = mark.board.trays.find((other) => other.x <= mark.x && mark.x <= other.x + other.width && moves.has(other.id));
      const lift = inTheWay ? Math.max(LEAST_TRAY, inTheWay.height * view.scale) + 1 : 0;
      const to = { x: view.toX(mark.board.left + mark.x), y: view.toY(mark.board.surface) - lift };
      const text = tray.step || String(mark.place);
      const size = { width: Math.max(14, text.length * 7 + 4), height: 14 };
      // Upwards it passes below the names of the board above; else it arches over the trays and comes down.
      const isUp = mark.board.surface > board.surface;
      const bend = isUp ? Math.min(to.y + lift + MOST_LINES * NAME_LINE + 6, from.y - 4) : from.y - 10;
      const half = size.width / 2 / view.scale;
      const middle = mark.board.left + mark.x;
      return [
        {
          id: tray.id,
          text,
          line: [from.x, from.y, from.x, bend, to.x, bend, to.x, isUp ? to.y + lift + 3 : to.y - size.height - 1],
          box: { x: to.x - size.width / 2, y: to.y - size.height, ...size },
          from: middle - half,
          to: middle + half,
          surface: mark.board.surface,
          height: 0,
          least: size.height + lift + 1,
        },
      ];
    }),
  );
}

/** Blue line from a misplaced tray to its gap. */
function BelongsLine({ mark }: { mark: Mark }) {
  return <ArrowLine points={mark.line} colour={colours.blue} width={1.3} head={5} />;
}

/** Its number at the gap. */
function BelongsNumber({ mark: { box, text } }: { mark: Mark }) {
  return (
    <Group listening={false}>
      <Rect {...box} fill={colours.leaf} stroke={colours.blue} strokeWidth={1.3} />
      <Text
        {...box}
        align="center"
        verticalAlign="middle"
        text={text}
        fontSize={10.5}
        fontStyle="bold"
        fontFamily={fonts.control}
        fill={colours.blue}
      />
    </Group>
  );
}

interface HandleProps {
  readonly board: FrontBoard;
  readonly layout: FrontLayout;
  readonly view: FrontView;
  readonly isMirrored: boolean;
  readonly onBoardDown: (key: string, event: Konva.KonvaEventObject<PointerEvent>) => void;
}

/** Grip at a board's far end: slides the board up and down. Drawn 22, caught at 44. */
function BoardHandle({ board, layout, view, isMirrored, onBoardDown }: HandleProps) {
  const x = isMirrored ? view.toX(0) : view.toX(layout.width);
  const y = view.toY(board.surface) + Math.max(1.5, 10 * view.scale);
  return (
    <Group x={x} y={y} onPointerDown={(event) => onBoardDown(board.key, event)}>
      <Circle radius={22} fill="rgba(0,0,0,0.001)" />
      <Circle radius={7} fill={colours.leaf} stroke={colours.blue} strokeWidth={1.4} listening={false} />
      <Line points={[-3, -1.5, 0, -4, 3, -1.5]} stroke={colours.blue} strokeWidth={1.2} listening={false} />
      <Line points={[-3, 1.5, 0, 4, 3, 1.5]} stroke={colours.blue} strokeWidth={1.2} listening={false} />
    </Group>
  );
}

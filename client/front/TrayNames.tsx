import { useMemo } from 'react';
import { Group, Rect, Text } from 'react-konva';
import { colours, fonts } from '../styles/tokens.ts';
import { NAME_LINE, NAME_SIZE } from './drawnSizes.ts';
import type { FrontBoard, FrontLayout, FrontTray } from './frontLayout.ts';
import type { FrontView } from './frontView.ts';
import { measureName } from './measureText.ts';
import { type NameLabel, nameLabels, wholeName } from './nameLabels.ts';
import { linesBelow, nameTop, type Standing, standingOn } from './nameRoom.ts';

interface Props {
  readonly layout: FrontLayout;
  readonly view: FrontView;
  readonly chosen: string | null;
  /** Written under a name: where the tray belongs, if on another shelf. */
  readonly asideOf: (id: string) => string;
  /** The numbers at the gaps of misplaced trays, which names keep clear of. */
  readonly marks: readonly Standing[];
}

/** px: the whole name of the chosen tray is no wider than this */
const WHOLE = 170;

/** The names of the trays over everything else, each on paper of its own so that no line goes through it; the chosen one whole. */
export function TrayNames({ layout, view, chosen, asideOf, marks }: Props) {
  const boards = useMemo(() => boardNamesOf(layout, view, asideOf, marks), [layout, view, asideOf, marks]);
  const board = layout.boards.find(({ trays }) => trays.some(({ id }) => id === chosen));
  const tray = board?.trays.find(({ id }) => id === chosen);
  const written = boards.flatMap(({ labels }) => labels).find(({ id }) => id === chosen);
  const isShort = board !== undefined && tray !== undefined && !written?.isWhole;
  // The neighbours make room for the whole name.
  const beside = useMemo(
    () => (isShort && chosen !== null ? boardNamesOf(layout, view, asideOf, marks, chosen) : boards),
    [isShort, chosen, boards, layout, view, asideOf, marks],
  );
  const wholeAt = isShort ? beside.flatMap(({ labels }) => labels).find(({ id, isWhole }) => id === chosen && isWhole) : undefined;
  const whole = isShort ? placeOfWhole(board, tray, view, wholeAt && view.toX(0) + wholeAt.x) : null;
  // A name half under it could be read as another.
  const isClear = (label: NameLabel, y: number): boolean =>
    !whole ||
    y + label.lines.length * NAME_LINE < whole.y - 3 ||
    y > whole.y + whole.high + 3 ||
    view.toX(0) + label.x + label.width < whole.x - 4 ||
    view.toX(0) + label.x > whole.x + whole.width + 4;
  return (
    <Group listening={false}>
      {beside.map(({ key, y, labels, ground }) =>
        labels
          .filter((label) => !(whole && label.id === chosen) && isClear(label, y))
          .map((label) => (
            <Name
              key={`${key}/${label.id}`}
              {...{ label, y, ground }}
              x={view.toX(0)}
              isBlue={label.id === chosen || asideOf(label.id) !== ''}
            />
          )),
      )}
      {whole && <Whole {...whole} />}
    </Group>
  );
}

/** `whole`: id of the tray whose name is written whole. */
function boardNamesOf(
  layout: FrontLayout,
  view: FrontView,
  asideOf: (id: string) => string,
  marks: readonly Standing[],
  whole: string | null = null,
) {
  const names = layout.boards.flatMap(({ trays }) => trays.map(({ name }) => name));
  const standing = [...standingOn(layout.boards), ...marks];
  return layout.boards.map((board) => {
    const trays = board.trays.map((tray) => ({
      id: tray.id,
      name: tray.name,
      middle: (board.left + tray.x + tray.width / 2) * view.scale,
      linesAt: (from: number, to: number) =>
        linesBelow(board, layout.boards, standing, { from: from / view.scale, to: to / view.scale }, view),
      aside: asideOf(tray.id),
      ...(tray.id === whole && { whole: wholeName(tray.name, WHOLE, measureName) }),
    }));
    const y = nameTop(board, view);
    return {
      key: board.key,
      y,
      ground: y > view.toY(0) ? colours.paper : colours.mat,
      labels: nameLabels(trays, names, layout.width * view.scale, measureName),
    };
  });
}

function Name({ label, x, y, ground, isBlue }: { label: NameLabel; x: number; y: number; ground: string; isBlue: boolean }) {
  return (
    <Group x={x + label.x} y={y}>
      <Rect x={-1} y={-1} width={label.width + 2} height={label.lines.length * NAME_LINE} fill={ground} />
      <Words lines={label.lines} width={label.width} colour={isBlue ? colours.blue : colours.ink} />
    </Group>
  );
}

interface WholeName {
  readonly lines: readonly string[];
  /** px */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly high: number;
}

function placeOfWhole(board: FrontBoard, tray: FrontTray, view: FrontView, at: number | undefined): WholeName {
  const { lines, width } = wholeName(tray.name, WHOLE, measureName);
  const high = lines.length * NAME_LINE;
  const middle = view.toX(board.left + tray.x + tray.width / 2);
  const x = at ?? Math.min(Math.max(middle - width / 2, 4), view.width - width - 4);
  return { lines, width, high, x, y: Math.min(nameTop(board, view), view.height - high - 3) };
}

/** The chosen tray's name in full, instead of its neighbours' where it has to. */
function Whole({ lines, x, y, width, high }: WholeName) {
  return (
    <Group x={x} y={y}>
      <Rect x={-3} y={-2} width={width + 6} height={high + 3} fill={colours.wash} stroke={colours.blue} strokeWidth={0.9} />
      <Words lines={lines} width={width} colour={colours.blue} />
    </Group>
  );
}

function Words({ lines, width, colour }: { lines: readonly string[]; width: number; colour: string }) {
  return (
    <Text
      x={-2}
      width={width + 4}
      align="center"
      text={lines.join('\n')}
      fontSize={NAME_SIZE}
      lineHeight={NAME_LINE / NAME_SIZE}
      wrap="none"
      fontFamily={fonts.control}
      fill={colour}
    />
  );
}

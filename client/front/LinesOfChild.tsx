import { Group, Line, Text } from 'react-konva';
import { colours, fonts } from '../styles/tokens.ts';
import type { FrontLine, LineKind } from './frontLines.ts';
import { type FrontView, isNarrow } from './frontView.ts';
import { measureName } from './measureText.ts';
import { spreadLabels } from './spreadLabels.ts';

interface Props {
  readonly lines: readonly FrontLine[];
  readonly view: FrontView;
  /** mm */
  readonly shelf: number;
  readonly isMirrored: boolean;
}

/** px between the two strokes of a double line; the upper is the height */
export const DOUBLE = 3;

export const lineLook: Readonly<Record<LineKind, { colour: string; text: string; dash: number[]; width: number }>> = {
  take: { colour: colours.must, text: colours.must, dash: [], width: 1.4 },
  high: { colour: colours.must, text: colours.must, dash: [8, 3], width: 1 },
  eye: { colour: colours.ink, text: colours.ink, dash: [8, 2.5, 1.5, 2.5], width: 0.9 },
  see: { colour: colours.note, text: colours.note, dash: [2, 3], width: 1.1 },
  low: { colour: colours.note, text: colours.note, dash: [8, 3], width: 1 },
};

/** Highest take, eye and see line of the smallest child, each with its height; the advisory pair where it applies. */
export function LinesOfChild({ lines, view, shelf, isMirrored }: Props) {
  const isOneLine = lines.every((line) => measureName(`${line.name}   ${line.text}`) * 1.05 < view.labelsWidth - 10);
  const tall = isOneLine ? 13 : 24;
  const at = spreadLabels(
    lines.map((line) => view.toY(line.z)),
    tall,
    2,
    view.height - 30,
  );
  const hasNames = !isNarrow(view.width);
  const near = isMirrored ? view.toX(0) - 10 : view.toX(shelf) + 10;
  const far = isMirrored ? view.toX(shelf) + 10 : view.toX(0) - 16;
  return (
    <Group listening={false}>
      {lines.map((line, i) => {
        const y = view.toY(line.z);
        const style = lineLook[line.kind];
        const labelY = at[i] ?? y;
        return (
          <Group key={`${line.kind}${line.text}`}>
            {(line.isDouble ? [y, y + DOUBLE] : [y]).map((at) => (
              <Line key={at} points={[far, at, near, at]} stroke={style.colour} strokeWidth={style.width} dash={style.dash} />
            ))}
            {hasNames && (
              <>
                <Line points={[near, y, isMirrored ? near - 6 : near + 6, labelY]} stroke={style.colour} strokeWidth={0.9} />
                <Text
                  x={isMirrored ? near - 8 - view.labelsWidth : near + 9}
                  y={labelY - (isOneLine ? 5.5 : 11)}
                  width={view.labelsWidth - 4}
                  align={isMirrored ? 'right' : 'left'}
                  text={isOneLine ? `${line.name}   ${line.text}` : `${line.name}\n${line.text}`}
                  fontSize={10.5}
                  lineHeight={1.05}
                  fontFamily={fonts.control}
                  fill={style.text}
                  wrap="none"
                />
              </>
            )}
          </Group>
        );
      })}
    </Group>
  );
}

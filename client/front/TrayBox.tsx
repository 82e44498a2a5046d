import type Konva from 'konva';
import { memo } from 'react';
import { Circle, Group, Line, Rect, Text } from 'react-konva';
import { colours, fonts } from '../styles/tokens.ts';
import { contentOf, contentStrokes } from './drawings.ts';
import { LEAST_TRAY, RIM_MM } from './drawnSizes.ts';
import type { FrontTray } from './frontLayout.ts';

type TrayLook = 'stands' | 'misplaced' | 'ghost' | 'left';

interface Props {
  readonly tray: FrontTray;
  /** px: left edge and the board's surface */
  readonly x: number;
  readonly y: number;
  /** px per mm */
  readonly scale: number;
  readonly look: TrayLook;
  readonly isChosen: boolean;
  readonly onDown?: ((id: string, event: Konva.KonvaEventObject<PointerEvent>) => void) | undefined;
}

/** px that a finger hits */
const CATCH = 44;

/** A tray from the front: box with its step, simple drawing of what is on it. Its name is drawn over everything, TrayNames. */
export const TrayBox = memo(function TrayBox({ tray, x, y, scale, look, isChosen, onDown }: Props) {
  const width = Math.max(4, tray.width * scale);
  const height = Math.max(LEAST_TRAY, tray.height * scale);
  const box = Math.min(height, Math.max(LEAST_TRAY, RIM_MM * scale));
  const isGhost = look === 'ghost' || look === 'left';
  const line = look === 'left' ? colours.pencil : look === 'ghost' ? colours.blue : colours.ink;
  const isFilled = look === 'misplaced';
  const drawn = contentStrokes(contentOf(tray.tray.material), width * 0.8, height - box - 1);
  const hit = Math.max(0, (CATCH - height) / 2);
  return (
    <Group x={x} y={y} opacity={look === 'left' ? 0.55 : 1} listening={!isGhost} onPointerDown={(event) => onDown?.(tray.id, event)}>
      {!isGhost && (
        <Rect
          x={Math.min(0, (width - CATCH) / 2)}
          y={-height - hit}
          width={Math.max(width, CATCH)}
          height={height + hit}
          fill="rgba(0,0,0,0.001)"
        />
      )}
      <Group x={width * 0.1} y={-height} listening={false}>
        {drawn.map((stroke, i) => {
          const key = `${stroke.kind}${i}`;
          if (stroke.kind === 'line') return <Line key={key} points={[...stroke.points]} stroke={line} strokeWidth={0.8} />;
          if (stroke.kind === 'ring')
            return (
              <Circle
                key={key}
                x={stroke.x}
                y={stroke.y}
                radius={Math.max(0.4, stroke.radius)}
                stroke={line}
                strokeWidth={0.8}
                fill={colours.leaf}
              />
            );
          return (
            <Rect
              key={key}
              x={stroke.x}
              y={stroke.y}
              width={stroke.width}
              height={stroke.height}
              stroke={line}
              strokeWidth={0.8}
              fill={colours.leaf}
            />
          );
        })}
      </Group>
      <Rect
        y={-box}
        width={width}
        height={box}
        fill={isFilled ? colours.shouldText : look === 'ghost' ? colours.wash : colours.leaf}
        stroke={isFilled ? colours.shouldText : line}
        strokeWidth={1.1}
        dash={tray.isMeasured && look !== 'left' ? [] : [2.5, 2.5]}
        listening={false}
      />
      <Text
        y={-box}
        width={width}
        height={box}
        align="center"
        verticalAlign="middle"
        text={tray.isMeasured ? tray.step : `${tray.step} ?`.trim()}
        fontSize={10.5}
        fontStyle="bold"
        fontFamily={fonts.control}
        fill={isFilled ? colours.leaf : look === 'ghost' ? colours.blue : colours.ink}
        wrap="none"
        listening={false}
      />
      {isChosen && (
        <Rect x={-3} y={-height - 3} width={width + 6} height={height + 5} stroke={colours.blue} strokeWidth={2.2} listening={false} />
      )}
    </Group>
  );
});

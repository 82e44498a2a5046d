import { Group, Rect, Text } from 'react-konva';
import { colours, fonts } from '../styles/tokens.ts';
import type { FrontView } from './frontView.ts';

interface Props {
  readonly view: FrontView;
  /** mm, how high the staff stands */
  readonly top: number;
  readonly isMirrored: boolean;
}

const BAR = 9;
const STEP_MM = 100;

/** A levelling staff in 0.1 m, lettered every 0.2 m while there is room. */
export function Staff({ view, top, isMirrored }: Props) {
  const bars = Math.ceil(top / STEP_MM);
  const each = STEP_MM * view.scale;
  const every = each * 2 >= 13 ? 2 : 5;
  return (
    <Group listening={false}>
      {Array.from({ length: bars }, (_, i) => `${i}`).map((name, i) => (
        <Group key={name}>
          <Rect
            x={view.staffAt}
            y={view.toY((i + 1) * STEP_MM)}
            width={BAR}
            height={each}
            fill={i % 2 === 0 ? colours.ink : colours.leaf}
            stroke={colours.ink}
            strokeWidth={0.9}
          />
          {i > 0 && i % every === 0 && (
            <Text
              x={isMirrored ? view.staffAt + BAR + 4 : view.staffAt - 26}
              y={view.toY(i * STEP_MM) - 5}
              width={22}
              align={isMirrored ? 'left' : 'right'}
              text={(i / 10).toFixed(1)}
              fontSize={10}
              fontFamily={fonts.control}
              fill={colours.pencilText}
            />
          )}
        </Group>
      ))}
    </Group>
  );
}

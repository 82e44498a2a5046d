import { Group, Rect, Text } from 'react-konva';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { colours, fonts } from '../styles/tokens.ts';
import type { FrontView } from './frontView.ts';

interface Props {
  readonly view: FrontView;
  /** mm, how high the staff stands */
  readonly top: number;
  readonly isMirrored: boolean;
  readonly units: LengthUnits;
}

const BAR = 9;
/** mm of a bar, and what the i-th is lettered with */
const staffs = {
  metric: { step: 100, letter: (i: number): string => (i / 10).toFixed(1) },
  imperial: { step: 152.4, letter: (i: number): string => `${i / 2}'` },
} as const;

/** A levelling staff in 0.1 m or half feet, every second lettered while there is room, else every fourth. */
export function Staff({ view, top, isMirrored, units }: Props) {
  const { step, letter } = staffs[units];
  const bars = Math.ceil(top / step);
  const each = step * view.scale;
  const every = each * 2 >= 13 ? 2 : 4;
  return (
    <Group listening={false}>
      {Array.from({ length: bars }, (_, i) => `${i}`).map((name, i) => (
        <Group key={name}>
          <Rect
            x={view.staffAt}
            y={view.toY((i + 1) * step)}
            width={BAR}
            height={each}
            fill={i % 2 === 0 ? colours.ink : colours.leaf}
            stroke={colours.ink}
            strokeWidth={0.9}
          />
          {i > 0 && i % every === 0 && (
            <Text
              x={isMirrored ? view.staffAt + BAR + 4 : view.staffAt - 26}
              y={view.toY(i * step) - 5}
              width={22}
              align={isMirrored ? 'left' : 'right'}
              text={letter(i)}
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

import { Line } from 'react-konva';

interface Props {
  /** px: x, y of each point */
  readonly points: readonly number[];
  readonly colour: string;
  readonly width: number;
  /** px of its head, along and across */
  readonly head: number;
}

/** A line with a filled head at its end. The drawing library's own arrow brings a reader of curves along, which is as large as all shapes used here. */
export function ArrowLine({ points, colour, width, head }: Props) {
  const [fromX = 0, fromY = 0, x = 0, y = 0] = points.slice(-4);
  const length = Math.hypot(x - fromX, y - fromY);
  const [ux, uy] = length === 0 ? [0, 0] : [(x - fromX) / length, (y - fromY) / length];
  const [backX, backY] = [x - ux * head, y - uy * head];
  const half = head / 2;
  return (
    <>
      <Line points={[...points.slice(0, -2), backX, backY]} stroke={colour} strokeWidth={width} lineJoin="round" listening={false} />
      <Line
        points={[backX - uy * half, backY + ux * half, x, y, backX + uy * half, backY - ux * half]}
        closed
        fill={colour}
        listening={false}
      />
    </>
  );
}

interface Props {
  /** mm */
  readonly width: number;
  readonly free: number;
  readonly label: string;
  readonly fits: boolean;
}

const LONG = 160;
const TALL = 16;

/** The gap dashed and the tray in it, both in one scale; red and hatched where it is too wide. */
export function GapDrawing({ width, free, label, fits }: Props) {
  const scale = Math.min(0.25, LONG / Math.max(width, free, 1));
  const tray = Math.max(10, width * scale);
  const isOver = width > free + 0.5;
  const colour = isOver && !fits ? 'var(--must)' : 'var(--blue)';
  return (
    <svg width={LONG + 6} height="26" viewBox={`0 0 ${LONG + 6} 26`} aria-hidden="true" focusable="false">
      <rect
        x="1.5"
        y="3"
        width={Math.max(2, free * scale)}
        height={TALL + 3}
        fill="none"
        stroke="var(--pencil)"
        strokeDasharray="2.5 2.5"
      />
      <rect
        x="4"
        y="6"
        width={tray}
        height={TALL}
        fill={isOver && !fits ? 'url(#hatch-not-counted)' : 'var(--wash)'}
        stroke={colour}
        strokeWidth="1.3"
      />
      <rect x={4 + tray / 2 - 10} y="8" width="20" height="12" fill={isOver && !fits ? 'var(--paper)' : 'var(--wash)'} />
      <text x={4 + tray / 2} y="18.5" fontSize="11" fontWeight="700" textAnchor="middle" fill={colour}>
        {label}
      </text>
      <path d={`M0 ${23}H${LONG + 6}`} stroke="var(--ink)" strokeWidth="2" />
    </svg>
  );
}

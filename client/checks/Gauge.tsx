import type { Severity } from '#model/findings/finding.ts';

interface Props {
  readonly measured: number;
  readonly needed: number;
  readonly severity: Severity;
  readonly label: string;
}
const WIDTH = 148;
const lineOf: Readonly<Record<Severity, string>> = { must: 'var(--must)', should: 'var(--should)', note: 'var(--note)' };

/** Measured as a bar, needed as a tick with a foot, on one scale that starts at nothing; none where nothing is what is needed: things to move, what is too much. */
export function Gauge({ measured, needed, severity, label }: Props) {
  const most = Math.max(measured, needed) * 1.25;
  if (!Number.isFinite(most) || needed <= 0) return null;
  const at = (value: number) => 1 + (Math.max(0, value) / most) * (WIDTH - 2);
  const bar = at(measured);
  const tick = at(needed);
  const steps = Array.from({ length: 11 }, (_, i) => 1 + (i / 10) * (WIDTH - 2));
  return (
    <svg className="gauge" viewBox={`0 0 ${WIDTH} 26`} preserveAspectRatio="xMinYMid meet" role="img" aria-label={label}>
      <path d={`M1 17.5H${WIDTH - 1}`} stroke="var(--pencil)" strokeWidth="0.9" />
      {steps.map((x) => (
        <path key={x} d={`M${x} 14.5V17.5`} stroke="var(--pencil)" strokeWidth="0.8" />
      ))}
      <path d={`M1 6H${bar}M1 2.5V9.5M${bar} 2.5V9.5`} stroke={lineOf[severity]} strokeWidth="2.2" />
      <path d={`M${tick} 1V17.5`} stroke="var(--ink)" strokeWidth="1.3" strokeDasharray="2 1.6" />
      <path d={`M${tick - 4} 24.5H${tick + 4}L${tick} 18Z`} fill="var(--ink)" />
    </svg>
  );
}

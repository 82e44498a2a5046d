import type { Severity } from '#model/findings/finding.ts';

export type Mark = Severity | 'on-the-table';
export const severityWord: Readonly<Record<Severity, string>> = { must: 'must', should: 'should', note: 'note' };

/** Severity by shape first: filled diamond, half-filled triangle, ring, dashed ring. Always beside its word. */
export function SeverityMark({ mark, size = 14 }: { mark: Mark; size?: number }) {
  return (
    <svg className="mark" width={size} height={size} viewBox="0 0 14 14" aria-hidden="true" focusable="false">
      {shapes[mark]}
    </svg>
  );
}

const shapes: Readonly<Record<Mark, React.ReactNode>> = {
  must: <path d="M7 0.5 13.5 7 7 13.5 0.5 7Z" fill="var(--must)" />,
  should: (
    <>
      <path d="M7 1 13.2 12.6H0.8Z" fill="none" stroke="var(--should)" strokeWidth="1.5" strokeLinejoin="round" />
      <path d="M7 1 13.2 12.6H7Z" fill="var(--should)" />
    </>
  ),
  note: <circle cx="7" cy="7" r="5" fill="none" stroke="var(--note)" strokeWidth="1.8" />,
  'on-the-table': <circle cx="7" cy="7" r="5" fill="none" stroke="var(--pencil)" strokeWidth="1.5" strokeDasharray="2.2 1.7" />,
};

/** Mark and word together, in the colour of the severity. */
export function SeverityWord({ severity }: { severity: Severity }) {
  return (
    <span className={`severity ${severity}`}>
      <SeverityMark mark={severity} /> {severityWord[severity]}
    </span>
  );
}

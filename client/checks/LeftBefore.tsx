import type { Finding } from '#model/findings/finding.ts';
import { useClassroom } from '../session/hooks.ts';

/** An open finding that was left as it is, until it became worse. What it said then stands in the list of those left. */
export function LeftBefore({ finding }: { finding: Finding }) {
  const { left } = useClassroom();
  const entry = finding.leftReason === null ? left.find(({ key }) => key === finding.key) : undefined;
  if (!entry) return null;
  return <p className="aside">{sayWorse(entry.reason)}</p>;
}

const sayWorse = (reason: string): string =>
  reason === '' ? 'It was left as it is, and has become worse.' : `It was left as it is with the reason “${reason}”, and has become worse.`;

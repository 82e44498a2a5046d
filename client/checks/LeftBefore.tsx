import type { Finding } from '#model/findings/finding.ts';
import { useClassroom } from '../session/hooks.ts';

/** An open finding that was left as it is, until it became worse: what was said then. */
export function LeftBefore({ finding }: { finding: Finding }) {
  const { left } = useClassroom();
  const entry = finding.leftReason === null ? left.find(({ key }) => key === finding.key) : undefined;
  if (!entry) return null;
  return (
    <p className="aside">
      It was left as it is{entry.reason && `: “${entry.reason}”`}. Since then it has become worse
      {entry.was?.message && `; it said: “${entry.was.message}”`}
    </p>
  );
}

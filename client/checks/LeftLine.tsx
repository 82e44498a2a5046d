import type { Report } from '#model/analysis/report.ts';
import { useClassroom } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { keepInSight } from './keepInSight.ts';
import { leftGroups } from './leftGroups.ts';

/** How many were left as they are, and the way down to them: they stand at the end of a long column. */
export function LeftLine({ report }: { report: Report }) {
  const { left } = useClassroom();
  if (left.length === 0) return null;
  const count = leftGroups(left, report.findings).length;
  return (
    <p className="left-line">
      <TextLink onPress={showLeft}>
        {count} left as {count === 1 ? 'it is' : 'they are'}
      </TextLink>
    </p>
  );
}

function showLeft(): void {
  const title = document.getElementById('left-title');
  title?.focus({ preventScroll: true });
  if (title) keepInSight(title.closest('section') ?? title);
}

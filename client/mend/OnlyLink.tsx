import type { MendOnly } from '#model/analysis/mendWays/mendWays.ts';
import type { Report } from '#model/analysis/report.ts';
import { isOfWidth } from '../plan/reportParts.ts';
import { useReportOf, useScene } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { MendStore } from './mendStore.ts';

/** A search for less than every way as wide as is asked; nothing where that would find nothing to do. */
export function OnlyLink({ store, only }: { readonly store: MendStore; readonly only: MendOnly }) {
  const { access } = useScene().classroom;
  const mustAny = useReportOf(mustBeWider);
  const isLess = !access.required && !access.wheelchair && access.leastWidth < access.routeWidth;
  if (only === 'must' && !(isLess && mustAny)) return null;
  const text = only === 'must' ? 'Only as wide as it must be' : 'Only widen the narrowest place';
  return <TextLink onPress={() => store.look(only)}>{text}</TextLink>;
}

/** Whether a way is narrower than it must be, and was not left so. */
export const mustBeWider = (report: Report | null): boolean =>
  report?.findings.some((finding) => isOfWidth(finding) && finding.severity === 'must' && finding.leftReason === null) ?? false;

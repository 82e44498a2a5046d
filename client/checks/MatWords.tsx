import { useReportOf } from '../session/hooks.ts';
import { sayMats } from './sayMats.ts';

/** How many mats fit, as surely as it is known. */
export function MatWords() {
  const words = useReportOf(sayMats);
  return words === null ? null : (
    <p className="aside" data-told>
      {words}
    </p>
  );
}

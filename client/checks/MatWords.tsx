import { useReport } from '../session/hooks.ts';
import { sayMats } from './sayMats.ts';

/** How many mats fit, as surely as it is known. */
export function MatWords() {
  const words = sayMats(useReport());
  return words === null ? null : <p className="aside">{words}</p>;
}

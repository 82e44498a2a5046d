import { usePlanState } from './usePlanState.ts';

/** How the thing in hand lies to what it stands with, while it is dragged; said aloud when it is let go. */
export function RestLine() {
  const { rest } = usePlanState('rest');
  return rest === '' ? null : (
    <p className="rest-line" aria-hidden="true">
      {rest}
    </p>
  );
}

import { focusChecks } from '../front/frontFocus.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { useSession } from '../session/hooks.ts';

/** The first thing that Tab comes to, seen only then: a way past everything that stands on the plan. */
export function SkipToChecks() {
  const session = useSession();
  function skip(): void {
    const store = planStoreOf(session);
    store.set({ checksAsked: store.state().checksAsked + 1 });
    focusChecks();
  }
  return (
    <button type="button" className="skip" onClick={skip}>
      Skip to the checks
    </button>
  );
}

import { afterEach, describe, expect, it, vi } from 'vitest';
import { createPlanModel } from '#client/plan/planModel.ts';
import { planStoreOf } from '#client/plan/planStore.ts';
import { setDown } from '#client/plan/toolPress.ts';
import { planSession } from './planSession.ts';

afterEach(() => void vi.unstubAllGlobals());

function said(): string | undefined {
  const session = planSession();
  const model = createPlanModel(session, () => undefined);
  planStoreOf(session).set({ tool: { kind: 'piece', of: 'shelf' } });
  setDown(model, { x: 2000, y: 2000 });
  return session.said.at(-1);
}

describe('what is said of a thing that was set down', () => {
  it('names the fields where they stand in line', () => {
    expect(said()).toMatch(/ is set down\. Arrows move it, the fields give it its size\.$/);
  });

  it('names where they are on a tablet, which folds them away', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    expect(said()).toMatch(/ is set down\. Arrows move it, “Figures” under More give it its size\.$/);
  });
});

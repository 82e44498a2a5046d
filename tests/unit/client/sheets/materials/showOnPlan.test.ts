// @vitest-environment happy-dom
import { expect, it } from 'vitest';
import { planStoreOf } from '#client/plan/planStore.ts';
import { showOnPlan } from '#client/sheets/materials/showOnPlan.ts';
import { planSession } from '../../plan/planSession.ts';

it('goes to the plan with the tray chosen, the whole room in sight, and says which shelf holds it', () => {
  const session = planSession({
    pieces: [{ id: 's1', kind: 'shelf', x: 1000, y: 300, width: 1200, depth: 320, sides: ['front'], levels: [{ id: 'l1', surface: 300 }] }],
    materials: [
      { id: 'm1', name: 'Rods', width: 300, depth: 200 },
      { id: 'm2', name: 'Beads', width: 300, depth: 200, state: 'store' },
    ],
    placements: [{ material: 'm1', piece: 's1', side: 'front', level: 'l1', x: 100, y: 0, turned: false }],
  });
  session.setView({ sheet: 'materials' });
  planStoreOf(session).set({ isMoved: true });
  const [rods, beads] = session.classroom().materials;
  if (!rods || !beads) throw new Error('both are in the class');
  showOnPlan(session, rods);
  expect(session.view()).toMatchObject({
    sheet: 'room',
    chosen: { kind: 'tray', id: 'm1' },
    material: 'm1',
    frontOf: { piece: 's1', side: 'front' },
  });
  expect(planStoreOf(session).state()).toMatchObject({ drawingAsked: 1, wholeRoom: 1 });
  expect(session.said.at(-1)).toMatch(/^Rods: shelf 1, .+ · 1st\. Its shelf is marked on the plan\.$/);
  showOnPlan(session, beads);
  expect(session.said.at(-1)).toBe('Beads: in store.');
});

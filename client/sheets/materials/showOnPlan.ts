import type { Material } from '#model/schema/types.ts';
import { bringIntoSight } from '../../front/frontFocus.ts';
import { planStoreOf } from '../../plan/planStore.ts';
import type { Session } from '../../session/types.ts';
import { sayWhereabouts } from './sayWhereabouts.ts';
import { whereaboutsOf } from './whereabouts.ts';

/** Goes to the plan, where what holds the material is marked while its tray is chosen; says where it is, and brings the drawing into sight. */
export function showOnPlan(session: Session, material: Material): void {
  const scene = session.scene();
  const at = whereaboutsOf(scene).get(material.id) ?? { at: 'none' as const };
  const store = planStoreOf(session);
  const { isMoved, wholeRoom, drawingAsked } = store.state();
  session.setView({
    sheet: 'room',
    chosen: { kind: 'tray', id: material.id },
    material: material.id,
    ...(at.at === 'board' && { frontOf: { piece: at.side.piece.id, side: at.side.side } }),
  });
  store.set({ drawingAsked: drawingAsked + 1, ...(isMoved && { wholeRoom: wholeRoom + 1 }) });
  session.announce(
    `${material.name}: ${sayWhereabouts(scene, material, at)}.${at.at === 'board' ? ' Its shelf is marked on the plan.' : ''}`,
  );
  bringIntoSight('plan');
}

import type { Finding } from '#model/findings/finding.ts';
import { boardPart, sayThings } from '#model/findings/sayBoard.ts';
import type { Scene, SceneBoard } from '#model/scene/types.ts';
import { bringIntoSight } from '../front/frontFocus.ts';
import { shelfWords } from '../front/shelfNames.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { isOfWidth } from '../plan/reportParts.ts';
import type { Session } from '../session/types.ts';
import { showFinding } from './showFinding.ts';

/** What is marked for a finding: things on the plan, and trays on the front of one of them. */
export interface PointedAt {
  /** ids of pieces, fixtures, doors and windows */
  readonly things: readonly string[];
  /** ids of materials on `front`; empty: it is not about a shelf's trays */
  readonly trays: readonly string[];
  /** the board that the first of the trays stands on, or that the finding is about; null: it is no matter of a front */
  readonly front: Pick<SceneBoard, 'piece' | 'side'> | null;
}

/** Brings what a finding is about into sight, marks it there, and says so: on its shelf's front what is about trays, else on the plan. */
export function pointOut(session: Session, finding: Finding): void {
  showFinding(session, finding);
  const scene = session.scene();
  const { things, trays, front } = pointedAt(finding, scene);
  const store = planStoreOf(session);
  const { isMoved, wholeRoom, frontAsked, drawingAsked } = store.state();
  if (things.length === 0 && !finding.at) {
    session.announce('It is of the whole room: no one place shows it.');
    return;
  }
  if (front) session.setView({ frontOf: { piece: front.piece.id, side: front.side } });
  store.set({
    pointed: finding.key,
    ...(isMoved && { wholeRoom: wholeRoom + 1 }),
    ...(front ? { frontAsked: frontAsked + 1 } : { drawingAsked: drawingAsked + 1 }),
  });
  const isNarrow = !front && finding.at !== undefined && isOfWidth(finding);
  session.announce(`${sayPointed(scene, { things, trays, front })}${isNarrow ? ' A ring is round the place where it is narrow.' : ''}`);
  bringIntoSight(front ? 'front' : 'plan');
}

/** What a finding is about, as it can be marked. */
export function pointedAt({ rule, key, subjects, trays = [] }: Finding, scene: Scene): PointedAt {
  const isOfTrays = /^(order|reach)\//.test(rule);
  const named = [...new Set([...trays, ...subjects])].filter((id) => scene.stands.get(id)?.board);
  const own = named.map((id) => scene.stands.get(id)?.board).find((board) => board);
  const part = `${key.split('#')[1] ?? ''}/`;
  const boards = scene.sides.filter(({ piece }) => piece.id === subjects[0]).flatMap((side) => side.boards);
  const told = isOfTrays && !own ? (boards.find((board) => part.startsWith(`${boardPart(board)}/`)) ?? boards[0]) : undefined;
  const front = own ?? told ?? null;
  const onFront = named.filter((id) => {
    const board = scene.stands.get(id)?.board;
    return board?.piece === front?.piece && board?.side === front?.side;
  });
  const shelves = named.flatMap((id) => scene.stands.get(id)?.board?.piece.id ?? []);
  const things = [...subjects.filter((id) => isThing(scene, id)), ...shelves, ...(front ? [front.piece.id] : [])];
  return {
    things: [...new Set(things)],
    trays: named.length > 0 ? onFront : (told?.trays.map(({ material }) => material.id) ?? []),
    front,
  };
}

const isThing = (scene: Scene, id: string): boolean =>
  scene.bodyById.has(id) || scene.room.openings.some((opening) => opening.id === id) || id.startsWith('wall:');

function sayPointed(scene: Scene, { things, trays, front }: PointedAt): string {
  const names = trays.map((id) => scene.materialById.get(id)?.name ?? id);
  if (front && names.length > 0) return `Marked on the front of ${shelfWords(scene, front.piece.id)}: ${sayThings(names)}.`;
  if (front) return `The front of ${shelfWords(scene, front.piece.id)} is shown.`;
  const bodies = things.filter((id) => scene.bodyById.has(id)).map((id) => shelfWords(scene, id));
  return bodies.length > 0 ? `Marked on the plan: ${sayThings(bodies)}.` : 'Its place is marked on the plan.';
}

import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Placement } from '#model/schema/types.ts';
import { doFix } from '../checks/doFix.ts';
import { fixWords } from '../checks/fixWords.ts';
import type { Session } from '../session/types.ts';
import { bestInStep, fitOptions } from './fitOptions.ts';
import { frontLayout } from './frontLayout.ts';
import { orderMoves } from './orderMoves.ts';
import { putOption } from './putOption.ts';
import { shelfWords } from './shelfNames.ts';

export interface TrayMend {
  /** "Put it on the middle board, right of Blocks", or "Do it: Blocks and Cards in order" where several have to move. */
  readonly words: string;
  /** @returns false: it stays, and it was said why */
  run(session: Session): boolean;
}

/**
 * What puts a misplaced tray in step: the mend that the order check itself proposes, which keeps the gaps and brings nothing
 * new; where it proposes none, the best place that is in step. Null: it is in step, or nothing helps it alone.
 */
export function trayMend(scene: Scene, report: Report | null, id: string): TrayMend | null {
  const finding = fixOf(report, id);
  if (finding?.fix) {
    const placed = placementsOf(finding);
    const own = placed.find(({ material }) => material === id);
    const words = own && isAlone(scene, placed, id) ? sayPut(scene, own, placed) : fixWords(finding.fix.label).button;
    return { words, run: (session) => doFix(session, finding) };
  }
  if (!orderMoves(report, scene).has(id)) return null;
  const option = bestInStep(fitOptions(scene, id));
  const own = option?.placements[0];
  if (!option || !own) return null;
  return {
    words: sayPut(scene, own, option.placements),
    run(session) {
      putOption(session, id, option);
      return true;
    },
  };
}

/** Puts one misplaced tray where it belongs, with what has to move for it. @returns false: it stays, and it was said why. */
export function putInStep(session: Session, id: string): boolean {
  const scene = session.scene();
  const mend = trayMend(scene, session.report(), id);
  if (mend) return mend.run(session);
  session.announce(`${scene.materialById.get(id)?.name ?? 'The tray'} has no better place just now.`);
  return false;
}

/** The order finding whose mend moves a tray, or that is about it. */
function fixOf(report: Report | null, id: string): Finding | undefined {
  const open = (report?.findings ?? []).filter(({ rule, fix, leftReason }) => rule === 'order/sequence' && fix && leftReason === null);
  return (
    open.find((finding) => finding.subjects.includes(id) && placementsOf(finding).some(({ material }) => material === id)) ??
    open.find((finding) => finding.subjects.includes(id))
  );
}

const placementsOf = ({ fix }: Finding): Placement[] => (fix?.edits ?? []).flatMap((edit) => (edit.do === 'place' ? [edit.placement] : []));

const isOnBoard = (p: Placement, q: Placement): boolean => p.piece === q.piece && p.side === q.side && p.level === q.level;

/** Whether all others that a mend places stay on their board and in their order: they slide, no more. */
function isAlone(scene: Scene, placed: readonly Placement[], id: string): boolean {
  const then = new Map(placed.map((placement) => [placement.material, placement]));
  return placed.every((placement) => {
    if (placement.material === id) return true;
    const now = scene.stands.get(placement.material)?.placement;
    if (!now || !isOnBoard(now, placement)) return false;
    return scene.arrangement.placements.every((other) => {
      if (other.material === id || !isOnBoard(other, now)) return true;
      return Math.sign(other.x - now.x) === Math.sign((then.get(other.material) ?? other).x - placement.x);
    });
  });
}

/** "Put it on the middle board, right of Blocks"; with the shelf where it is another one. */
function sayPut(scene: Scene, own: Placement, placed: readonly Placement[]): string {
  const now = scene.stands.get(own.material)?.placement;
  const side = scene.sides.find((each) => each.piece.id === own.piece && each.side === own.side);
  const name =
    side &&
    frontLayout(side)
      .boards.find(({ key }) => key === (own.level ?? ''))
      ?.name.toLowerCase();
  const board = name === undefined ? 'its board' : own.level === null ? 'the top of the shelf' : `the ${name} board`;
  const isElsewhere = own.piece !== null && (now?.piece !== own.piece || now.side !== own.side);
  const then = new Map(scene.arrangement.placements.map((placement) => [placement.material, placement]));
  for (const placement of placed) then.set(placement.material, placement);
  const left = [...then.values()]
    .filter((other) => other.material !== own.material && isOnBoard(other, own) && other.x < own.x)
    .sort((p, q) => q.x - p.x)[0];
  const beside = left ? `right of ${scene.materialById.get(left.material)?.name ?? 'its neighbour'}` : 'at its left end';
  const where = isElsewhere && own.piece !== null ? `${board} of ${shelfWords(scene, own.piece)}` : board;
  return `Put it on ${where}, ${beside}`;
}

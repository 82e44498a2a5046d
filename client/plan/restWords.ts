import type { Session } from '#client/session/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { capital } from '../text/sayList.ts';
import { lower, nameOfItem } from './describe.ts';
import type { PlanModel } from './planModel.ts';
import type { RowEnd, RowGap } from './sameGap.ts';
import type { SnapLine } from './snap.ts';

/** "Flush with the north wall; 0.90 m from table T1, the same gap as between table T2 and table T3." Empty: nothing holds it. */
export function restWords(session: Session, lines: readonly SnapLine[]): string {
  const said = [...new Set([...lines].sort((p, q) => rank(q) - rank(p)).map((line) => sayLine(session, line)))].join('; ');
  return said === '' ? '' : `${capital(said)}.`;
}

/** What holds it along the plan first, whatever holds it better: so the words keep their order. The same for a direction and its opposite. */
const rank = ({ axis: { x, y } }: SnapLine): number => Math.abs(x) + x * y;

function sayLine(session: Session, { kind, other, gap }: SnapLine): string {
  if (gap) return sayGap(session, gap);
  return kind === 'aligned' ? `level with ${nameEnd(session, other)}` : `flush with ${nameEnd(session, other)}`;
}

function sayGap(session: Session, { own, like }: NonNullable<SnapLine['gap']>): string {
  const [first, second] = own;
  if (!first) return '';
  const mm = sayLength(first.mm, session.classroom().display.units);
  const beside = (gap: RowGap): string => nameEnd(session, gap.between.find(({ id }) => id !== '') ?? gap.between[0]);
  if (!like) return second ? `${mm} on both sides, from ${beside(first)} and from ${beside(second)}` : '';
  const [p, q] = like.between;
  return `${mm} from ${beside(first)}, the same gap as between ${nameEnd(session, p)} and ${nameEnd(session, q)}`;
}

function nameEnd(session: Session, end: RowEnd): string {
  if (end.kind === 'wall') return `the ${lower(nameOfItem(session, { kind: 'wall', id: end.id }))}`;
  const isPiece = session.arrangement().pieces.some(({ id }) => id === end.id);
  return lower(nameOfItem(session, { kind: isPiece ? 'piece' : 'fixture', id: end.id }));
}

/** Shows the words while the thing is in hand; they change far less often than its place. */
export function sayRest(model: PlanModel, lines: readonly SnapLine[]): void {
  const rest = restWords(model.session, lines);
  if (model.store.state().rest !== rest) model.store.set({ rest });
}

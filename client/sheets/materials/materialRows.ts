import type { Finding, Severity } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { sayStep } from '../../front/frontLayout.ts';
import type { BelongsAt } from '../../front/orderMoves.ts';
import { isStepJudged } from '../../front/practicalLife.ts';
import { NOT_JUDGED } from '../../front/sayFit.ts';
import { shelfWords, sideTitle } from '../../front/shelfNames.ts';
import type { ChecksOf } from '../../lists/trayChecks.ts';
import { capital } from '../../text/sayList.ts';
import { isMeant } from './findMaterials.ts';
import type { FitInWords } from './fitInWords.ts';
import { sayWhereabouts } from './sayWhereabouts.ts';
import { areaKey } from './threads.ts';
import { type Whereabouts, whereaboutsOf } from './whereabouts.ts';

export type RowVerb = 'place it' | 'make room' | 'put in step' | null;
export type RowOrder = 'step' | 'shelf' | 'checks';

export interface MaterialRow {
  readonly id: string;
  readonly step: string;
  readonly name: string;
  readonly stands: string;
  /** mm; null: on no board, or its height is not known */
  readonly board: number | null;
  readonly width: number | null;
  readonly mark: Severity | 'on-the-table' | null;
  readonly check: string;
  readonly verb: RowVerb;
}

export interface RowSection {
  readonly title: string;
  readonly rows: readonly MaterialRow[];
}

export interface RowContext {
  readonly scene: Scene;
  readonly moves: ReadonlyMap<string, BelongsAt | null>;
  readonly checks: ChecksOf;
  /** Where a material on the table fits; missing: not looked up yet. */
  readonly fits: ReadonlyMap<string, FitInWords>;
}

/** The table of materials: what is on the table first, then by step, shelf or check, last what is not out. */
export function rowSections(context: RowContext, filter: { area: string | null; typed: string; order: RowOrder }): RowSection[] {
  const { scene } = context;
  const where = whereaboutsOf(scene);
  const groups = new Map<string, { rank: number; rows: { row: MaterialRow; key: readonly (number | string)[] }[] }>();
  for (const material of scene.classroom.materials) {
    if (filter.area !== null && areaKey(material) !== filter.area) continue;
    const at = where.get(material.id) ?? { at: 'none' };
    const row = rowOf(context, material, at);
    if (!isMeant({ material, stands: `${row.stands} ${at.at === 'board' ? sideTitle(scene, at.side) : ''}` }, filter.typed)) continue;
    const { title, rank, key } = sectionOf(scene, material, at, row, filter.order);
    const group = groups.get(title);
    if (group) group.rows.push({ row, key });
    else groups.set(title, { rank, rows: [{ row, key }] });
  }
  return [...groups]
    .sort(([p, a], [q, b]) => a.rank - b.rank || p.localeCompare(q))
    .map(([title, { rows }]) => ({ title, rows: rows.sort((p, q) => byKeys(p.key, q.key)).map(({ row }) => row) }));
}

function rowOf({ scene, moves, checks, fits }: RowContext, material: Material, at: Whereabouts): MaterialRow {
  const finding = checks.get(material.id)?.[0];
  const row: MaterialRow = {
    id: material.id,
    step: sayStep(material.step),
    name: material.name,
    stands: sayWhereabouts(scene, material, at),
    board: at.at === 'board' ? at.board.surface : null,
    width: material.width,
    mark: finding?.severity ?? null,
    check: finding ? short(finding) : at.at === 'board' ? (isStepJudged(scene, material) ? 'in step' : NOT_JUDGED) : '',
    verb: null,
  };
  if (at.at === 'board' && moves.has(material.id)) {
    // What is graver than its step is said before it.
    const isGraver = finding?.severity === 'must' && !finding.rule.startsWith('order/');
    const step = belongs(scene, moves.get(material.id));
    return {
      ...row,
      mark: finding?.severity ?? 'should',
      check: isGraver ? `${short(finding)}; also ${step}` : step,
      verb: 'put in step',
    };
  }
  if (at.at === 'floor') return { ...row, check: 'not on a board: draw it on the plan' };
  if (at.at !== 'table') return row;
  if (material.width === null) return { ...row, mark: 'on-the-table', check: 'its width is not known' };
  const fit = fits.get(material.id);
  return { ...row, mark: 'on-the-table', check: fit?.say ?? '', verb: fit?.verb ?? null };
}

/** Of one material in a line what a check says of a whole board at length; the panel beside has its words. */
const shortWords: Readonly<Record<string, string>> = {
  'reach/take': 'out of reach',
  'reach/see': 'she does not see into it',
  'reach/carry': 'heavy to carry',
  'reach/two-hands': 'takes two hands, above the shoulder',
  'reach/advisory': 'outside the band from a wheelchair',
};
const short = ({ rule, message }: Finding): string => shortWords[rule] ?? message;

function belongs(scene: Scene, to: BelongsAt | null | undefined): string {
  return to ? `out of step, belongs on ${shelfWords(scene, to.piece)}` : 'out of step';
}

const severityRank: Readonly<Record<Severity, number>> = { must: 0, should: 1, note: 2 };
const severityTitle: Readonly<Record<Severity, string>> = { must: 'Must be mended', should: 'Should be mended', note: 'Worth a note' };

function sectionOf(scene: Scene, material: Material, at: Whereabouts, row: MaterialRow, order: RowOrder) {
  const bySteps = [material.step ?? Number.POSITIVE_INFINITY, material.name];
  if (at.at === 'table') return { title: 'On the table, not placed yet', rank: -1, key: [material.strand, ...bySteps] };
  if (at.at === 'floor') return { title: 'Stands on the floor, not on a board', rank: 8500, key: [material.strand, ...bySteps] };
  if (at.at === 'away') return { title: 'Not out: in store, to mend, to make or wanted', rank: 9000, key: [material.strand, ...bySteps] };
  if (at.at === 'none') return { title: 'Without a tray of its own', rank: 9001, key: [material.strand, ...bySteps] };
  if (order === 'checks') {
    const severity = row.mark === 'on-the-table' ? null : row.mark;
    return severity
      ? { title: severityTitle[severity], rank: severityRank[severity], key: [material.strand, ...bySteps] }
      : { title: 'Nothing to mend', rank: 3, key: [material.strand, ...bySteps] };
  }
  if (order === 'shelf') {
    if (at.at === 'room') return { title: 'Standing in the room', rank: 8000, key: bySteps };
    return { title: sideTitle(scene, at.side), rank: scene.sides.indexOf(at.side), key: [at.order] };
  }
  return { title: material.strand === '' ? 'Without a strand' : capital(material.strand), rank: strandRank(scene, material), key: bySteps };
}

const strandRanks = new WeakMap<readonly Material[], ReadonlyMap<string, number>>();

/** Strands in the order in which the materials name them. */
function strandRank(scene: Scene, material: Material): number {
  const { materials } = scene.classroom;
  let ranks = strandRanks.get(materials);
  if (!ranks) {
    const made = new Map<string, number>();
    for (const { strand } of materials) if (!made.has(strand)) made.set(strand, made.size);
    ranks = made;
    strandRanks.set(materials, ranks);
  }
  return ranks.get(material.strand) ?? 0;
}

function byKeys(p: readonly (number | string)[], q: readonly (number | string)[]): number {
  for (let i = 0; i < p.length; i++) {
    const a = p[i] as number | string;
    const b = q[i] as number | string;
    if (a === b) continue;
    return typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b));
  }
  return 0;
}

import type { Classroom } from '../schema/types.ts';
import type { Ratios } from '../standards/childRatios.ts';
import { type RuleSet, ruleSetOf, ruleSets } from '../standards/ruleSets.ts';
import type { SpaceTable } from '../standards/spacePerChild.ts';

/** A rule set with its tables picked for this classroom. */
export interface ChosenRules {
  /** As the file names it. */
  readonly id: string;
  /** Undefined: no rule set has that name. */
  readonly set: RuleSet | undefined;
  readonly name: string;
  /** null: see `missing` */
  readonly space: SpaceTable | null;
  readonly ratios: Ratios | null;
  /** The class typed its own floor per child. */
  readonly isOwnFigure: boolean;
  /** What to enter before the floor can be divided. */
  readonly missing: readonly string[];
}

/** The floor per child that the class set for itself (m²), an option of places/area; null: none. */
export function ownPerChild(classroom: Classroom): number | null {
  const typed = classroom.options['places/area']?.perChild;
  return typeof typed === 'number' && typed > 0 && Number.isFinite(typed) ? typed : null;
}

/** Picks the tables of a rule set. The class's own figure replaces only those of the set it chose. */
export function chooseRules(classroom: Classroom, id: string = classroom.ruleSet): ChosenRules {
  const set = ruleSetOf(id);
  const own = id === classroom.ruleSet ? ownPerChild(classroom) : null;
  const base = { id, set, name: set?.name ?? id, isOwnFigure: own !== null };
  if (!set) return { ...base, space: null, ratios: null, missing: [`choose a rule set: "${id}" is none of those known`] };
  const ratios = set.ratios === null || isRatios(set.ratios) ? set.ratios : (byService(set.ratios, classroom.service) ?? null);
  if (own !== null)
    return { ...base, ratios, space: { source: 'class rule', rows: [{ fromMonths: 0, toMonths: null, m2: own }] }, missing: [] };
  if (set.space === null) return { ...base, ratios, space: null, missing: ['choose whose rule counts, or set your own floor per child'] };
  if (isTable(set.space)) return { ...base, ratios, space: set.space, missing: [] };
  const space = byService(set.space, classroom.service);
  const services = Object.keys(set.space).join(', ');
  return { ...base, ratios, space: space ?? null, missing: space ? [] : [`say what kind of service it is: ${services}`] };
}

/** Every rule set, picked for this classroom, the one in force first. */
export function everyChoice(classroom: Classroom): ChosenRules[] {
  const others = ruleSets.filter((set) => set.id !== classroom.ruleSet).map((set) => chooseRules(classroom, set.id));
  return [chooseRules(classroom), ...others];
}

type ByService<T> = Readonly<Record<string, T>>;
const byService = <T>(tables: ByService<T>, service: string | null): T | undefined =>
  service !== null && Object.hasOwn(tables, service) ? tables[service] : undefined;
const isTable = (space: SpaceTable | ByService<SpaceTable>): space is SpaceTable => Array.isArray(space.rows);
const isRatios = (ratios: Ratios | ByService<Ratios>): ratios is Ratios => typeof ratios.kind === 'string';

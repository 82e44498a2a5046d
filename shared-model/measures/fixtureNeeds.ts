import type { Classroom } from '../schema/types.ts';
import { type FixtureCount, fixtureCounts } from '../standards/fixtureCounts.ts';

/** Children that one serves, as the class set it; null: the rule set's figure. */
export interface OwnFixtures {
  readonly perToilet: number | null;
  readonly perBasin: number | null;
}

/** What a number of children need of toilets or basins. */
export interface FixtureNeed {
  readonly what: 'toilets' | 'basins';
  /** null: not counted yet */
  readonly there: number | null;
  readonly per: number;
  /** null: the class set its own figure */
  readonly printed: FixtureCount | null;
  /** Fewest by any reading of the text, and by its strictest. */
  readonly least: number;
  readonly most: number;
}

/** The figures that the class set for itself: options of places/fixtures. */
export function ownFixtures(classroom: Pick<Classroom, 'options'>): OwnFixtures {
  const typed = classroom.options['places/fixtures'] ?? {};
  const positive = (value: unknown): number | null => (typeof value === 'number' && value > 0 && Number.isFinite(value) ? value : null);
  return { perToilet: positive(typed.perToilet), perBasin: positive(typed.perBasin) };
}

/** Toilets and basins that so many children need under the class's rule set; empty where no figure is known. */
export function fixtureNeeds({ ruleSet, room }: Pick<Classroom, 'ruleSet' | 'room'>, children: number, own: OwnFixtures): FixtureNeed[] {
  const printed = Object.hasOwn(fixtureCounts, ruleSet) ? (fixtureCounts[ruleSet] ?? null) : null;
  const asked = [
    { what: 'toilets', there: room.toilets, own: own.perToilet, byRule: printed?.perToilet ?? null },
    { what: 'basins', there: room.basins, own: own.perBasin, byRule: printed?.perBasin ?? null },
  ] as const;
  return asked.flatMap(({ what, there, own: figure, byRule }): FixtureNeed[] => {
    const per = figure ?? byRule;
    if (per === null) return [];
    const source = figure === null ? printed : null;
    return [{ what, there, per, printed: source, ...neededOf(what, per, source, children) }];
  });
}

/** A fraction of the number counts as one more; Scotland's own example rounds to the nearest. */
function neededOf(
  what: FixtureNeed['what'],
  per: number,
  printed: FixtureCount | null,
  children: number,
): Pick<FixtureNeed, 'least' | 'most'> {
  const whole = Math.ceil(children / per - 1e-9);
  const floor = what === 'toilets' ? (printed?.leastToilets ?? 0) : 0;
  const most = Math.max(whole, floor);
  const isOpen = what === 'toilets' && printed?.exampleRounds === true;
  return { least: isOpen ? Math.max(1, Math.floor(children / per + 0.5)) : most, most };
}

import { z } from 'zod';
import type { RuleFinding, RuleResult } from '../../findings/finding.ts';
import { type ExitFigures, exitFigures } from '../../measures/exitFigures.ts';
import { exitsOf } from '../../measures/exits.ts';
import { sayOpening } from '../../measures/wayWords.ts';
import { alongOpening } from '../../scene/room.ts';
import type { Scene, SceneOpening } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const doors = defineRule({
  id: 'exit/doors',
  asks: 'Are there exits enough, and are they wide enough?',
  why: 'Where the only door is on fire or too narrow for so many, nobody behind it gets out in time.',
  tier: 'settle',
  sources: ['B01', 'B02', 'B04', 'B05', 'B07', 'B17', 'B18', 'class rule'],
  options: z.strictObject({
    /** mm of clear opening that every exit must have; null: as the chosen rules ask */
    width: z.number().min(0).max(100_000).nullable().default(null),
    /** exits that the room must have; null: as the chosen rules ask */
    count: z.number().int().min(1).max(20).nullable().default(null),
    /** mm that leaf, stop and hinges may take off the width of a door that was not measured clear */
    leaf: z.number().min(0).max(500).default(50),
  }),
  messages: {
    few: 'The room has {exits}; for {persons} {needed} are asked for. Your fire authority decides.',
    narrow: '{exit} is {width} clear; {needed} is asked of an exit for {persons}. Your fire authority decides.',
    notMeasured:
      'Whether {exit} is {needed} clear, as is asked of an exit, is not known; it is {width} wide in all. Your fire authority decides.',
    rules: 'Whether there are exits enough is not known: no rules for the ways out are chosen. Your fire authority decides.',
    exits: 'Whether there are exits enough is not known: no door is marked as an exit. Your fire authority decides.',
  },
  judge({ scene, options }): RuleResult {
    const figures = exitFigures(scene);
    if (!figures) return unknown('rules', 'whose rules count for the ways out');
    const exits = exitsOf(scene);
    if (exits.length === 0) return unknown('exits', 'which doors lead out of the building or to a safe way out');
    const wanted = options.count ?? figures.exitsNeeded;
    const needed = options.width ?? figures.doorWidth(exits.length);
    const few = exits.length < wanted ? [tooFew(figures, exits.length, wanted, options.count !== null)] : [];
    const bar = { needed, isPrinted: options.width === null, leaf: options.leaf, figures };
    return { applies: true, findings: [...few, ...exits.flatMap((exit) => judgeExit(scene, exit, bar))] };
  },
});

const sayPersons = ({ persons }: ExitFigures): string => (persons.count === 1 ? 'one person' : `${persons.count} persons`);

function tooFew(figures: ExitFigures, exits: number, wanted: number, isOwn: boolean): RuleFinding {
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'few',
    data: { exits: exits === 1 ? 'one exit' : `${exits} exits`, persons: sayPersons(figures), needed: wanted },
    subjects: ['room'],
    sources: isOwn ? ['class rule'] : figures.sources.doors,
  };
}

interface Bar {
  readonly needed: number;
  readonly isPrinted: boolean;
  readonly leaf: number;
  readonly figures: ExitFigures;
}

function judgeExit(scene: Scene, exit: SceneOpening, { needed, isPrinted, leaf, figures }: Bar): RuleFinding[] {
  const { clear, raw } = exit;
  const most = Math.min(clear ?? raw.width, raw.width);
  const surely = clear === null ? Math.max(0, raw.width - leaf) : most;
  if (meets(surely, needed, isPrinted)) return [];
  const name = sayOpening(scene, exit.id);
  const common = {
    severity: 'should',
    data: { exit: name, width: mm(most), needed: mm(needed), persons: sayPersons(figures) },
    subjects: [exit.id],
    needed: mm(needed),
    at: alongOpening(exit, 0.5),
    sources: isPrinted ? figures.sources.doors : ['class rule'],
  } as const;
  if (!meets(most, needed, isPrinted)) return [{ ...common, outcome: 'problem', messageKey: 'narrow', measured: mm(most) }];
  const missing = [`the clear opening of ${name} with its leaf at 90 degrees`];
  return [{ ...common, outcome: 'cannot-tell', messageKey: 'notMeasured', missing }];
}

function unknown(messageKey: 'rules' | 'exits', missing: string): RuleResult {
  const finding = { outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] } as const;
  return { applies: true, findings: [finding] };
}

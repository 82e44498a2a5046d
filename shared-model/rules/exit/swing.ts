import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { exitFigures } from '../../measures/exitFigures.ts';
import { exitsOf } from '../../measures/exits.ts';
import { sayOpening } from '../../measures/wayWords.ts';
import { alongOpening } from '../../scene/room.ts';
import { defineRule } from '../rule.ts';

export const swing = defineRule({
  id: 'exit/swing',
  asks: 'Do the exits open the way people leave?',
  why: 'A crowd that presses against a door opening inward keeps it shut.',
  tier: 'settle',
  sources: ['B01', 'B02', 'B05', 'B18', 'class rule'],
  options: z.strictObject({
    /** persons from which on exits must open outward; null: as the chosen rules ask */
    persons: z.number().int().min(1).max(1000).nullable().default(null),
  }),
  messages: {
    inward: '{exit} opens into the room; for {persons} persons it should open outward (asked from {from} on). Your fire authority decides.',
    rules: 'Whether the exits open the right way is not known: no rules for the ways out are chosen. Your fire authority decides.',
    exits: 'Whether the exits open the right way is not known: no door is marked as an exit. Your fire authority decides.',
  },
  judge({ scene, options }): RuleResult {
    const figures = exitFigures(scene);
    if (!figures) return unknown('rules', 'whose rules count for the ways out');
    const exits = exitsOf(scene);
    if (exits.length === 0) return unknown('exits', 'which doors lead out of the building or to a safe way out');
    const hinged = exits.filter(({ raw }) => raw.kind === 'door' && /^(in|out)-/.test(raw.swing));
    if (hinged.length === 0) return doesNotApply;
    const from = options.persons ?? figures.outwardFrom;
    const persons = figures.persons.count;
    if (persons < from) return { applies: true, findings: [] };
    const inward = hinged.filter(({ raw }) => raw.swing.startsWith('in-'));
    const findings = inward.map(
      (exit): RuleFinding => ({
        outcome: 'problem',
        severity: 'should',
        messageKey: 'inward',
        data: { exit: sayOpening(scene, exit.id), persons, from },
        subjects: [exit.id],
        at: alongOpening(exit, 0.5),
        sources: options.persons === null ? figures.sources.swing : ['class rule'],
      }),
    );
    return { applies: true, findings };
  },
});

function unknown(messageKey: 'rules' | 'exits', missing: string): RuleResult {
  const finding = { outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] } as const;
  return { applies: true, findings: [finding] };
}

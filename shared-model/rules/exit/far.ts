import { z } from 'zod';
import type { RuleFinding, RuleResult } from '../../findings/finding.ts';
import { exitFigures } from '../../measures/exitFigures.ts';
import { sayOpening } from '../../measures/wayWords.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const longest = z.number().min(0).max(1_000_000).nullable().default(null);

export const far = defineRule({
  id: 'exit/far',
  asks: 'Is it near enough to a way out from everywhere?',
  why: 'A room fills with smoke in minutes. Small children walk slowly, and round every shelf that stands in between.',
  tier: 'settle',
  sources: ['B05', 'B13', 'B15', 'B16', 'class rule'],
  options: z.strictObject({
    /** mm of the longest walk where there is one exit; null: as the chosen rules ask */
    oneExit: longest,
    /** mm where there are several; null: as the chosen rules ask */
    severalExits: longest,
  }),
  messages: {
    far: 'From the farthest place it is {walk} to the nearest exit; with {exits} no more than {needed} is asked for. Part of the figures is from memory, so it is a class rule here. Your fire authority decides.',
    shutOff: 'How far it is to walk out is not known: no walk leads from the floor to {exit}. Your fire authority decides.',
    rules: 'Whether it is near enough to a way out is not known: no rules for the ways out are chosen. Your fire authority decides.',
    exits: 'How far it is to walk out is not known: no door is marked as an exit. Your fire authority decides.',
    walls: 'How far it is to walk out is not known: the walls cross each other or enclose nothing. Your fire authority decides.',
  },
  judge({ scene, measures, options }): RuleResult {
    const figures = exitFigures(scene);
    if (!figures) return unknown('rules', 'whose rules count for the ways out');
    if (!scene.room.isSound) return unknown('walls', 'walls that close and do not cross');
    const { exits, toEach, toNearest } = measures.exitWalks();
    const [first] = exits;
    if (!first) return unknown('exits', 'which doors lead out of the building or to a safe way out');
    const exit = exits.map(({ id }) => sayOpening(scene, id)).join(' or ');
    if (!toNearest) return unknown('shutOff', `a free walk to ${exit}`, { exit });
    const open = toEach.filter((walk) => walk !== null).length;
    const own = open === 1 ? options.oneExit : options.severalExits;
    const needed = own ?? (open === 1 ? figures.walk.one : figures.walk.several);
    // Told as between two figures, the longer one counts.
    if (meets(needed, toNearest.most)) return { applies: true, findings: [] };
    const walk = mm(toNearest.most);
    const finding: RuleFinding = {
      outcome: 'problem',
      severity: 'should',
      messageKey: 'far',
      data: { walk, needed: mm(needed), exits: open === 1 ? 'one exit' : `${open} exits` },
      subjects: ['room'],
      measured: walk,
      needed: mm(needed),
      at: toNearest.at,
      sources: own === null ? [...figures.sources.walk, 'class rule'] : ['class rule'],
    };
    return { applies: true, findings: [finding] };
  },
});

type Missing = 'rules' | 'exits' | 'walls' | 'shutOff';

function unknown(messageKey: Missing, missing: string, data: RuleFinding['data'] = {}): RuleResult {
  const finding = { outcome: 'cannot-tell', severity: 'should', messageKey, data, subjects: ['room'], missing: [missing] } as const;
  return { applies: true, findings: [finding] };
}

import { z } from 'zod';
import type { RuleFinding, RuleResult } from '../../findings/finding.ts';
import { exitFigures } from '../../measures/exitFigures.ts';
import { exitsOf } from '../../measures/exits.ts';
import { type ExitWay, measureExitWays } from '../../measures/exitWays.ts';
import type { Target } from '../../measures/targets.ts';
import { sayOpening, sayPlace, sayTarget } from '../../measures/wayWords.ts';
import type { Scene } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const blocked = defineRule({
  id: 'exit/blocked',
  asks: 'Is the way out wide enough for everyone?',
  why: 'When all have to leave at once, in smoke or in the dark, one narrow place holds up everybody behind it.',
  tier: 'settle',
  sources: ['B01', 'B02', 'B04', 'B07', 'B17'],
  options: z.strictObject({
    /** mm that a way out must be wide; null: as the chosen rules ask */
    width: z.number().min(0).max(100_000).nullable().default(null),
  }),
  messages: {
    narrow:
      'The way out from {fronts} is {width} wide at its narrowest, {place}; {needed} is needed for {persons}. Your fire authority decides.',
    chairs:
      'While children sit at the tables, the way out from {fronts} is {width} wide at its narrowest, {place}; {needed} is needed for {persons}. With chairs pushed in it is wide enough. Your fire authority decides.',
    none: 'No way out leads from {fronts}. Your fire authority decides.',
    exit: 'The way to {exit} is {width} wide at its narrowest, {place}, and an exit counts only when it can be got to; {needed} is needed for {persons}. Your fire authority decides.',
    noneToExit: 'No way leads to {exit}, and an exit counts only when it can be got to. Your fire authority decides.',
    rules: 'Whether everybody gets out is not known: no rules for the ways out are chosen. Your fire authority decides.',
    exits: 'Whether everybody gets out is not known: no door is marked as an exit. Your fire authority decides.',
    walls: 'Whether everybody gets out is not known: the walls cross each other or enclose nothing. Your fire authority decides.',
  },
  judge({ scene, options }): RuleResult {
    const figures = exitFigures(scene);
    if (!figures) return unknown('rules', 'whose rules count for the ways out');
    if (!scene.room.isSound) return unknown('walls', 'walls that close and do not cross');
    if (exitsOf(scene).length === 0) return unknown('exits', 'which doors lead out of the building or to a safe way out');
    const needed = options.width ?? figures.wayWidth;
    const isPrinted = options.width === null;
    const { narrow, shut } = measureExitWays(scene, needed, (width) => meets(width, needed, isPrinted));
    const persons = `${figures.persons.count} persons`;
    const common = {
      outcome: 'problem',
      severity: 'must',
      needed: mm(needed),
      sources: isPrinted ? figures.sources.width : ['class rule'],
    } as const;
    const say = (way: ExitWay) => {
      const [one, other] = way.between;
      const place = one && other ? sayPlace(scene, one.id, other.id) : '';
      return { width: mm(way.width), needed: mm(needed), persons, place, fronts: sayFronts(way.fronts) };
    };
    const fronts = narrow.map((way): RuleFinding => {
      const messageKey = way.between.length === 0 ? 'none' : way.isByChairs ? 'chairs' : 'narrow';
      return { ...common, messageKey, data: say(way), ...identity(scene, way), measured: mm(way.width), ...(way.at && { at: way.at }) };
    });
    const exits = shut.map(({ exit, way }): RuleFinding => {
      const messageKey = way.between.length === 0 ? 'noneToExit' : 'exit';
      const data = { ...say(way), exit: sayOpening(scene, exit.id) };
      return { ...common, messageKey, data, subjects: [exit.id], measured: mm(way.width), ...(way.at && { at: way.at }) };
    });
    return { applies: true, findings: [...fronts, ...exits] };
  },
});

function unknown(messageKey: 'rules' | 'exits' | 'walls', missing: string): RuleResult {
  const finding = {
    outcome: 'cannot-tell',
    severity: 'must',
    messageKey,
    data: {},
    subjects: ['room'],
    missing: [missing],
  } as const;
  return { applies: true, findings: [finding] };
}

/** The things on both sides of the narrow place; where there is no way at all, those shut in. */
function identity(scene: Scene, { between, fronts }: ExitWay): Pick<RuleFinding, 'subjects' | 'part'> {
  const things = [...new Set(between.map(({ id }) => id))].filter((id) => scene.bodyById.has(id)).sort();
  if (things.length > 0) return { subjects: things };
  const first = fronts[0];
  return { subjects: [first?.id ?? 'room'], ...(first?.side && { part: first.side }) };
}

function sayFronts(fronts: readonly Target[]): string {
  const [first, second] = fronts;
  const name = first ? sayTarget(first) : '';
  if (!second) return name;
  return fronts.length === 2 ? `${name} and ${sayTarget(second)}` : `${name} and ${fronts.length - 1} others`;
}

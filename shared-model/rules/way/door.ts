import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { accessFigures } from '../../measures/accessFigures.ts';
import { sayOpening } from '../../measures/wayWords.ts';
import { alongOpening } from '../../scene/room.ts';
import type { SceneOpening } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const size = z.number().min(0).max(100_000);
const printed = { clear: 815, deepClear: 915, deepOver: 610 } as const;

const options = z.strictObject({
  /** mm of clear opening with the leaf at 90 degrees */
  clear: size.default(printed.clear),
  /** mm of clear opening where the opening is deep */
  deepClear: size.default(printed.deepClear),
  /** mm; an opening deeper than this is deep */
  deepOver: size.default(printed.deepOver),
  /** mm that leaf, stop and hinges may take off the width of a door that was not measured clear */
  leaf: size.default(50),
});

/** What an opening is held to: at least `needed` mm, asked with `severity`. */
interface Bar {
  readonly needed: number;
  readonly isPrinted: boolean;
  readonly severity: 'must' | 'should';
}

export const door = defineRule({
  id: 'way/door',
  asks: 'Is every door wide enough?',
  why: 'What does not fit through the door stays outside: a wheelchair, a child with a mat, two who meet.',
  tier: 'live',
  sources: ['A09', 'B09', 'class rule'],
  options,
  messages: {
    narrow: '{door} is {width} clear; {needed} is needed.',
    narrowFrame: '{door} is {width} wide in all, so its clear opening is narrower still; {needed} is needed.',
    notMeasured: 'Whether {door} is {needed} clear is not known; it is {width} wide in all.',
  },
  judge({ scene, options: figures }): RuleResult {
    const openings = scene.room.openings.filter((o) => o.isWayIn);
    if (openings.length === 0) return doesNotApply;
    const access = accessFigures(scene);
    const findings = openings.flatMap((opening): RuleFinding[] => {
      const isDeep = (opening.raw.depth ?? 0) > figures.deepOver;
      const needed = isDeep ? figures.deepClear : figures.clear;
      const wanted: Bar = {
        needed,
        isPrinted: needed === (isDeep ? printed.deepClear : printed.clear),
        severity: access.isRequired ? 'must' : 'should',
      };
      const least: Bar = { needed: access.leastWidth, isPrinted: access.isLeastPrinted, severity: 'must' };
      const bars = access.isRequired ? [wanted] : [least, wanted];
      return judgeOpening(opening, sayOpening(scene, opening.id), bars, figures.leaf);
    });
    return { applies: true, findings };
  },
});

/** @param bars the gravest first */
function judgeOpening(opening: SceneOpening, name: string, bars: readonly Bar[], leaf: number): RuleFinding[] {
  const { clear, raw } = opening;
  const most = Math.min(clear ?? raw.width, raw.width);
  const surely = clear === null ? Math.max(0, raw.width - leaf) : most;
  const failed = bars.find((bar) => !meets(most, bar.needed, bar.isPrinted));
  const doubtful = bars.find((bar) => !meets(surely, bar.needed, bar.isPrinted));
  const bar = failed ?? doubtful;
  if (!bar) return [];
  const common = {
    severity: bar.severity,
    data: { door: name, width: mm(most), needed: mm(bar.needed) },
    subjects: [opening.id],
    needed: mm(bar.needed),
    at: alongOpening(opening, 0.5),
  };
  if (failed) return [{ ...common, outcome: 'problem', messageKey: clear === null ? 'narrowFrame' : 'narrow', measured: mm(most) }];
  const missing = [`the clear opening of ${name} with its leaf at 90 degrees`];
  return [{ ...common, outcome: 'cannot-tell', messageKey: 'notMeasured', missing }];
}

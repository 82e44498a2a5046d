import { leftReasonOf } from '../findings/asLeft.ts';
import { answerOf, type Finding, findingKey, type Outcome, type RuleFinding, type RuleResult } from '../findings/finding.ts';
import { fillMessage } from '../findings/messages.ts';
import type { Measures } from '../measures/values.ts';
import type { Rule } from '../rules/rule.ts';
import type { Scene } from '../scene/types.ts';
import type { Classroom, Left } from '../schema/types.ts';
import type { LengthUnits } from '../units/sayLength.ts';

/** One rule's answer and its findings, with text in the class's units and the reason of those left as they are. */
export interface Judged {
  readonly answer: Outcome;
  readonly findings: readonly Finding[];
}

export const judgeRule = (rule: Rule, scene: Scene, measures: Measures): Judged =>
  sayResult(rule, resultOf(rule, scene, measures, scene.classroom.options[rule.id]), scene.classroom);

/** What the class set of a rule, read once for each object of settings. */
const readOptions = new WeakMap<Rule, { readonly typed: unknown; readonly read: ReturnType<Rule['options']['safeParse']> }>();

function optionsOf(rule: Rule, typed: unknown) {
  const before = readOptions.get(rule);
  if (before && before.typed === typed) return before.read;
  const read = rule.options.safeParse(typed ?? {});
  readOptions.set(rule, { typed, read });
  return read;
}

/**
 * What the rule itself finds.
 * @param typed the class's own settings of this rule
 * @param proposes whether fixes are looked for
 */
export function resultOf(rule: Rule, scene: Scene, measures: Measures, typed: unknown, proposes = true): RuleResult {
  const options = optionsOf(rule, typed);
  if (options.success) return rule.judge({ scene, measures, options: options.data, proposes });
  return { applies: true, findings: [badOption(rule, options.error.issues[0]?.path.join('.') ?? '')] };
}

/** The same as people read it. Of the classroom only the units and what was left as it is are asked. */
export function sayResult(rule: Rule, result: RuleResult, classroom: Pick<Classroom, 'display' | 'left'>): Judged {
  const seen = new Map<string, number>();
  const left = new Map(classroom.left.toReversed().map((entry) => [entry.key, entry]));
  const findings = result.findings.map((found): Finding => {
    const key = findingKey(rule.id, found);
    const again = seen.get(key) ?? 0;
    seen.set(key, again + 1);
    return finish(rule, classroom.display.units, found, again === 0 ? key : `${key}#${again + 1}`, left);
  });
  return { answer: answerOf(result), findings };
}

function badOption(rule: Rule, option: string): RuleFinding {
  return {
    outcome: 'cannot-tell',
    severity: 'should',
    messageKey: 'option',
    data: { option },
    subjects: ['classroom'],
    missing: [`a valid value for the class's own setting "${option}" of ${rule.id}`],
  };
}

interface Finished {
  readonly rule: Rule;
  readonly units: LengthUnits;
  readonly entry: Left | undefined;
  readonly finding: Finding;
}

const finished = new WeakMap<RuleFinding, Finished>();

/** Once for each thing found: what a rule finds again as the very object is said in the very words. */
function finish(rule: Rule, units: LengthUnits, found: RuleFinding, key: string, left: ReadonlyMap<string, Left>): Finding {
  const entry = left.get(key);
  const before = finished.get(found);
  if (before?.rule === rule && before.units === units && before.entry === entry && before.finding.key === key) return before.finding;
  const finding = said(rule, units, found, key, entry);
  finished.set(found, { rule, units, entry, finding });
  return finding;
}

function said(rule: Rule, units: LengthUnits, found: RuleFinding, key: string, entry: Left | undefined): Finding {
  const text = found.messageKey === 'option' ? 'The setting "{option}" of this check could not be read.' : rule.messages[found.messageKey];
  if (text === undefined) throw new Error(`${rule.id} has no message "${found.messageKey}"`);
  return {
    key,
    rule: rule.id,
    messageKey: found.messageKey,
    outcome: found.outcome,
    severity: found.severity,
    subjects: found.subjects,
    trays: found.trays,
    message: fillMessage(text, found.data, units, found.needed),
    why: rule.why,
    measured: found.measured,
    needed: found.needed,
    at: found.at,
    sources: found.sources ?? rule.sources,
    missing: found.missing ?? [],
    leftReason: leftReasonOf(found, entry),
    fix: found.fix,
  };
}

import { answerOf, type Finding, findingKey, type Outcome, type RuleFinding, type RuleResult } from '../findings/finding.ts';
import { fillMessage } from '../findings/messages.ts';
import type { Mats } from '../measures/mats.ts';
import { type Measures, measuresOf } from '../measures/measures.ts';
import { rules as allRules } from '../rules/registry.ts';
import type { Rule, Tier } from '../rules/rule.ts';
import { buildScene } from '../scene/build.ts';
import type { Scene } from '../scene/types.ts';
import type { Classroom } from '../schema/types.ts';
import { liveReportMeasures, type ReportMeasures, reportMeasures } from './reportMeasures.ts';

/** The report of classroom-format, version 1. */
export interface Report {
  readonly format: 'lowshelf.report';
  readonly version: 1;
  readonly classroom: string;
  readonly arrangement: string;
  readonly answers: Readonly<Record<string, Outcome>>;
  readonly findings: readonly Finding[];
  readonly measures: ReportMeasures;
}

export interface AnalyseOptions {
  readonly arrangement?: string | null;
  /** Only rules of these tiers; absent: all. */
  readonly tiers?: readonly Tier[];
  readonly rules?: readonly Rule[];
  /** The mats, looked for longer than usual. */
  readonly mats?: Mats | null;
}

/** Judges one arrangement of a classroom by every rule. Pure; never throws on a classroom the schema accepts. */
export function analyse(classroom: Classroom, options: AnalyseOptions = {}): Report {
  const scene = buildScene(classroom, options.arrangement);
  const measures = measuresOf(scene, options.mats === undefined ? {} : { mats: options.mats });
  const answers: Record<string, Outcome> = {};
  const findings: Finding[] = [];
  for (const rule of options.rules ?? allRules) {
    if (options.tiers && !options.tiers.includes(rule.tier)) continue;
    const judged = judgeRule(rule, scene, measures);
    answers[rule.id] = judged.answer;
    findings.push(...judged.findings);
  }
  return {
    format: 'lowshelf.report',
    version: 1,
    classroom: classroom.name,
    arrangement: scene.arrangement.id,
    answers,
    findings,
    // A drag asks for the live rules alone and cannot wait for the slower figures.
    measures: options.tiers?.every((tier) => tier === 'live') ? liveReportMeasures(measures) : reportMeasures(measures),
  };
}

/** One rule's answer and its findings, with text in the class's units and the reason of those left as they are. */
export function judgeRule(rule: Rule, scene: Scene, measures: Measures): { answer: Outcome; findings: Finding[] } {
  const typed = scene.classroom.options[rule.id] ?? {};
  const options = rule.options.safeParse(typed);
  const result: RuleResult = options.success
    ? rule.judge({ scene, measures, options: options.data })
    : { applies: true, findings: [badOption(rule, options.error.issues[0]?.path.join('.') ?? '')] };
  const seen = new Map<string, number>();
  const findings = result.findings.map((found): Finding => {
    const key = findingKey(rule.id, found);
    const again = seen.get(key) ?? 0;
    seen.set(key, again + 1);
    return finish(rule, scene, found, again === 0 ? key : `${key}#${again + 1}`);
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

function finish(rule: Rule, scene: Scene, found: RuleFinding, key: string): Finding {
  const units = scene.classroom.display.units;
  const text = found.messageKey === 'option' ? 'The setting "{option}" of this check could not be read.' : rule.messages[found.messageKey];
  if (text === undefined) throw new Error(`${rule.id} has no message "${found.messageKey}"`);
  return {
    key,
    rule: rule.id,
    messageKey: found.messageKey,
    outcome: found.outcome,
    severity: found.severity,
    subjects: found.subjects,
    message: fillMessage(text, found.data, units, found.needed),
    why: rule.why,
    ...(found.measured && { measured: found.measured }),
    ...(found.needed && { needed: found.needed }),
    ...(found.at && { at: found.at }),
    sources: found.sources ?? rule.sources,
    missing: found.missing ?? [],
    leftReason: scene.classroom.left.find((entry) => entry.key === key)?.reason ?? null,
    ...(found.fix && { fix: found.fix }),
  };
}

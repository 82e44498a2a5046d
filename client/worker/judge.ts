import { judgeRule, type Report } from '#model/analysis/report.ts';
import { liveReportMeasures, reportMeasures } from '#model/analysis/reportMeasures.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Finding, Outcome } from '#model/findings/finding.ts';
import { type Measures, measuresOf } from '#model/measures/measures.ts';
import { rules as allRules } from '#model/rules/registry.ts';
import type { Rule, Tier } from '#model/rules/rule.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview } from '../session/types.ts';

interface Judged {
  readonly answer: Outcome;
  readonly findings: readonly Finding[];
}

/** One moment of a classroom, judged tier by tier on one set of measures. */
export interface Moment {
  readonly classroom: Classroom;
  readonly arrangement: string;
  readonly measures: Measures;
  readonly judged: Map<string, Judged>;
  readonly troubles: Map<string, string>;
}

/** The classroom as it would be with the thing that is being dragged. */
export function withPreview(classroom: Classroom, arrangement: string, preview: Preview | null): Classroom {
  if (!preview) return classroom;
  const { piece, x, y, rotation } = preview;
  return applyEdits(classroom, arrangement, [{ do: 'move-piece', piece, x, y, rotation }]);
}

export function beginMoment(classroom: Classroom, arrangement: string): Moment {
  const scene = buildScene(classroom, arrangement);
  return { classroom, arrangement: scene.arrangement.id, measures: measuresOf(scene), judged: new Map(), troubles: new Map() };
}

/** Judges one rule. A rule that breaks is told in words and answered "cannot tell"; the others go on. */
export function judgeInMoment(moment: Moment, rule: Rule): void {
  try {
    moment.judged.set(rule.id, judgeRule(rule, moment.measures.scene, moment.measures));
  } catch (error) {
    moment.judged.set(rule.id, { answer: 'cannot-tell', findings: [] });
    moment.troubles.set(rule.id, `"${rule.asks}" could not be worked out (${sayError(error)}). The other checks stand.`);
  }
}

export const rulesOf = (tier: Tier, rules: readonly Rule[] = allRules): Rule[] => rules.filter((rule) => rule.tier === tier);

/** The report of a moment; rules not judged in it yet keep what an earlier moment of the same arrangement said. */
export function reportOf(moment: Moment, earlier: Moment | null, measures: Report['measures'], rules: readonly Rule[] = allRules): Report {
  const old = earlier?.arrangement === moment.arrangement ? earlier : null;
  const answers: Record<string, Outcome> = {};
  const findings: Finding[] = [];
  for (const rule of rules) {
    const judged = moment.judged.get(rule.id) ?? old?.judged.get(rule.id);
    if (!judged) continue;
    answers[rule.id] = judged.answer;
    findings.push(...judged.findings);
  }
  return {
    format: 'lowshelf.report',
    version: 1,
    classroom: moment.classroom.name,
    arrangement: moment.arrangement,
    answers,
    findings,
    measures,
  };
}

/** The measures for the report; one that breaks is told in words. */
export function measuresFor(moment: Moment, stage: 'live' | 'settled'): Report['measures'] {
  try {
    return stage === 'live' ? liveReportMeasures(moment.measures) : reportMeasures(moment.measures);
  } catch (error) {
    moment.troubles.set('measures', `The figures beside the drawing could not be worked out (${sayError(error)}).`);
    return {};
  }
}

export const sayError = (error: unknown): string => (error instanceof Error ? error.message : String(error));

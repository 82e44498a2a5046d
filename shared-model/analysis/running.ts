import type { Finding, Outcome, RuleResult } from '../findings/finding.ts';
import { Kept } from '../measures/kept.ts';
import { MeasureDesk } from '../measures/measures.ts';
import type { Known, Measures } from '../measures/values.ts';
import { rules as allRules } from '../rules/registry.ts';
import type { Rule } from '../rules/rule.ts';
import { buildScene } from '../scene/build.ts';
import type { Scene } from '../scene/types.ts';
import type { Classroom } from '../schema/types.ts';
import { type Judged, resultOf, sayResult } from './judgeRule.ts';
import type { AnalyseOptions, Report } from './report.ts';
import { liveReportMeasures, type ReportMeasures, reportMeasures } from './reportMeasures.ts';

/** One state of a classroom, ready to be asked about. Holds until the analysis is moved on. */
export interface AnalysedMoment {
  readonly scene: Scene;
  readonly measures: Measures;
  judge(rule: Rule): Judged;
  /** The figures beside the findings: those of the live tier, or all. */
  figures(which: 'live' | 'all'): ReportMeasures;
}

/**
 * An analysis that follows a classroom from change to change. A rule runs again only if something that it read, or a
 * measure that it asked, is different; so do measures. The answers are the ones that an analysis from the start would give.
 */
export class RunningAnalysis {
  /** Ids of the rules that ran since the last change, in the order they ran. */
  readonly ran: string[] = [];
  private desk: MeasureDesk | null = null;
  private readonly kept = new Map<Rule, KeptRule>();
  private figures: { readonly live: Kept<ReportMeasures>; readonly all: Kept<ReportMeasures> } | null = null;

  /** @param proposes false: what rules find is asked, and of their fixes only what costs nothing to look for */
  constructor(private readonly proposes = true) {}

  analyse(classroom: Classroom, options: AnalyseOptions = {}): Report {
    const moment = this.moveTo(classroom, options.arrangement, options.mats === undefined ? {} : { mats: options.mats });
    const answers: Record<string, Outcome> = {};
    const findings: Finding[] = [];
    for (const rule of options.rules ?? allRules) {
      if (options.tiers && !options.tiers.includes(rule.tier)) continue;
      const judged = moment.judge(rule);
      answers[rule.id] = judged.answer;
      for (const finding of judged.findings) findings.push(finding);
    }
    return {
      format: 'lowshelf.report',
      version: 1,
      classroom: classroom.name,
      arrangement: moment.scene.arrangement.id,
      answers,
      findings,
      // A drag asks for the live rules alone and cannot wait for the slower figures.
      measures: moment.figures(options.tiers?.every((tier) => tier === 'live') ? 'live' : 'all'),
    };
  }

  /** Moves on to another state of the classroom, or to another arrangement or classroom altogether. */
  moveTo(classroom: Classroom, arrangement?: string | null, known: Known = {}): AnalysedMoment {
    const scene = buildScene(classroom, arrangement, this.desk?.scene);
    if (this.desk) this.desk.moveTo(scene, known);
    else this.desk = new MeasureDesk(scene, known);
    this.ran.length = 0;
    const { desk } = this;
    this.figures ??= {
      live: new Kept(desk, ({ measures }) => liveReportMeasures(measures)),
      all: new Kept(desk, ({ measures }) => reportMeasures(measures)),
    };
    const { figures } = this;
    return {
      scene,
      measures: desk.measures,
      judge: (rule) => this.keptRule(rule, desk).judge(classroom),
      figures: (which) => figures[which].get(),
    };
  }

  private keptRule(rule: Rule, desk: MeasureDesk): KeptRule {
    const known = this.kept.get(rule);
    if (known) return known;
    const made = new KeptRule(rule, desk, this.proposes, () => this.ran.push(rule.id));
    this.kept.set(rule, made);
    return made;
  }
}

/** A rule's result, and how people read it. */
class KeptRule {
  private readonly result: Kept<RuleResult>;
  private said: { readonly of: RuleResult; readonly units: string; readonly left: Classroom['left']; readonly judged: Judged } | null =
    null;

  constructor(
    private readonly rule: Rule,
    desk: MeasureDesk,
    proposes: boolean,
    onRun: () => void,
  ) {
    this.result = new Kept(desk, ({ scene, measures }, typed) => resultOf(rule, scene, measures, typed, proposes), onRun);
  }

  judge(classroom: Classroom): Judged {
    const { left, options } = classroom;
    const of = this.result.get(options[this.rule.id]);
    const { units } = classroom.display;
    if (this.said?.of === of && this.said.units === units && this.said.left === left) return this.said.judged;
    const judged = sayResult(this.rule, of, classroom);
    this.said = { of, units, left, judged };
    return judged;
  }
}

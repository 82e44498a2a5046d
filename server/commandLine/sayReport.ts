import { type FindingGroup, groupFindings } from '#model/analysis/groupFindings.ts';
import type { Report } from '#model/analysis/report.ts';
import { sayLeftState } from '#model/analysis/sayLeftState.ts';
import { type Finding, questions } from '#model/findings/finding.ts';
import { sourceText } from '#model/standards/sources.ts';
import { type Quantity, sayQuantity } from '#model/units/quantity.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';

/** The report for people: the questions in order, each finding with measured, needed and source. */
export function sayReport(report: Report, units: LengthUnits): string {
  const lines = [`${report.classroom}, arrangement ${report.arrangement}`, ''];
  for (const [group, question] of Object.entries(questions)) {
    const asked = Object.entries(report.answers).filter(([id]) => id.startsWith(`${group}/`));
    if (asked.length === 0) continue;
    const found = groupFindings(report.findings.filter((f) => f.rule.startsWith(`${group}/`)));
    const open = found.filter(({ lead }) => lead.leftReason === null);
    lines.push(`${question} ${open.length === 0 ? sayNoneOpen(asked.map(([, answer]) => answer)) : ''}`.trimEnd());
    for (const one of found) lines.push(...sayGroup(one, units));
    lines.push('');
  }
  const left = sayLeft(report);
  if (left.length > 0) lines.push('Left as they are:', ...left, '');
  lines.push(sayCount(report), 'A plan that passes is no licence: your local authority decides.');
  return lines.join('\n');
}

/** Each thing left with its reason; what the checks do not find any more says so. */
function sayLeft({ left = [], findings }: Report): string[] {
  return left.flatMap(({ key, reason, by, at, does }) => {
    const found = findings.find((finding) => finding.key === key);
    const state = sayLeftState({ does });
    const who = `left by ${by || 'somebody who gave no name'}${at === '' ? '' : ` on ${at}`}`;
    return [
      `  ${reason ? `"${reason}"` : 'no reason given'}, ${who}: ${found?.message ?? key}`,
      ...(state === null ? [] : [`      ${state}`]),
    ];
  });
}

function sayNoneOpen(answers: readonly string[]): string {
  return answers.every((answer) => answer === 'does-not-apply') ? '(does not apply)' : 'Yes, as far as checked.';
}

/** What one mend would answer is said once. */
function sayGroup({ lead, others }: FindingGroup, units: LengthUnits): string[] {
  const [first, ...details] = sayFinding(lead, units);
  const more =
    others.length === 0 ? [] : [`      and ${others.length} more at the same place: ${others.map((f) => f.subjects[0]).join(', ')}`];
  return [first ?? '', ...more, ...details];
}

function sayFinding(finding: Finding, units: LengthUnits): string[] {
  const left = finding.leftReason === null ? '' : ` (left as it is: ${finding.leftReason || 'no reason given'})`;
  const mark = finding.outcome === 'cannot-tell' ? 'cannot tell' : finding.severity;
  const figures = [
    finding.measured && `measured ${say(finding.measured, units, finding.needed)}`,
    finding.needed && `needed ${say(finding.needed, units)}`,
  ].filter((part) => part !== undefined);
  const details = [
    ...figures,
    ...(finding.missing.length > 0 ? [`missing: ${finding.missing.join('; ')}`] : []),
    ...(finding.fix ? [`would help: ${finding.fix.label}`] : []),
    ...(finding.sources.length > 0 ? [finding.sources.map((id) => sourceText(id) ?? id).join('; ')] : []),
  ];
  return [`  ${mark}: ${finding.message}${left}`, ...details.map((detail) => `      ${detail}`)];
}

function say(quantity: Quantity, units: LengthUnits, near?: Quantity): string {
  return sayQuantity(quantity, units, near?.unit === quantity.unit ? near.value : undefined);
}

function sayCount(report: Report): string {
  const open = groupFindings(report.findings.filter((f) => f.leftReason === null));
  const count = (pick: (f: Finding) => boolean): number => open.filter(({ lead }) => pick(lead)).length;
  const of = (severity: string): number => count((f) => f.outcome === 'problem' && f.severity === severity);
  return `${of('must')} must, ${of('should')} should, ${of('note')} note, ${count((f) => f.outcome === 'cannot-tell')} cannot tell.`;
}

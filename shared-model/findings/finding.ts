import type { Point } from '../geometry/vec.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Fix } from './edit.ts';

export type Outcome = 'problem' | 'fine' | 'cannot-tell' | 'does-not-apply';
export type Severity = 'must' | 'should' | 'note';

/** The nine questions people ask, in the order of the sheet. */
export const questions = {
  way: 'Can everyone get through?',
  reach: 'Can the smallest child reach it?',
  order: 'Can a child find the next step?',
  floor: 'Is there floor to work on?',
  places: 'Does the room take this many?',
  sight: 'Can an adult see?',
  exit: 'Can everyone get out?',
  steady: 'Is it safe as it stands?',
  survey: 'Does the drawing hold?',
} as const;
export type QuestionId = keyof typeof questions;

/** A value for a message: a quantity is said in the class's units, text and counts as they are. */
export type MessageValue = string | number | Quantity;

/** What a rule says of one thing; a field that does not apply is absent or undefined. Hundreds are made in each frame of a drag, so whole, without spreading. `analysis` adds key, message text and reason. */
export interface RuleFinding {
  readonly outcome: 'problem' | 'cannot-tell';
  readonly severity: Severity;
  /** Key into the rule's message table; what tests assert. */
  readonly messageKey: string;
  readonly data: Readonly<Record<string, MessageValue>>;
  /** Ids, the first is the primary one; with the rule's id they are the finding's identity. */
  readonly subjects: readonly string[];
  /** Ids of the materials that it is about, the first first, where the subjects do not say so. No part of its identity. */
  readonly trays?: readonly string[] | undefined;
  /** Tells findings of one rule on the same subjects apart, such as a strand or a board. */
  readonly part?: string | undefined;
  readonly measured?: Quantity | undefined;
  readonly needed?: Quantity | undefined;
  readonly at?: Point | undefined;
  /** Keys into standards; absent: the rule's own. */
  readonly sources?: readonly string[];
  /** Only for cannot-tell: what to measure or answer, in words. */
  readonly missing?: readonly string[];
  readonly fix?: Fix | undefined;
}

/** A finding as the report and the sheets show it (classroom-format: Report). */
export interface Finding {
  /** Stable identity: rule, subjects, part. */
  readonly key: string;
  readonly rule: string;
  readonly messageKey: string;
  readonly outcome: 'problem' | 'cannot-tell';
  readonly severity: Severity;
  readonly subjects: readonly string[];
  /** Ids of the materials that it is about, the first first, where the subjects do not say so. */
  readonly trays?: readonly string[] | undefined;
  readonly message: string;
  readonly why: string;
  readonly measured?: Quantity | undefined;
  readonly needed?: Quantity | undefined;
  readonly at?: Point | undefined;
  readonly sources: readonly string[];
  readonly missing: readonly string[];
  readonly leftReason: string | null;
  readonly fix?: Fix | undefined;
}

/** What one rule found in one classroom. */
export interface RuleResult {
  /** False: nothing here that the rule looks at. */
  readonly applies: boolean;
  readonly findings: readonly RuleFinding[];
}
export const doesNotApply: RuleResult = { applies: false, findings: [] };

export function answerOf(result: RuleResult): Outcome {
  if (!result.applies) return 'does-not-apply';
  if (result.findings.some((f) => f.outcome === 'problem')) return 'problem';
  return result.findings.some((f) => f.outcome === 'cannot-tell') ? 'cannot-tell' : 'fine';
}

export function findingKey(rule: string, finding: Pick<RuleFinding, 'subjects' | 'part'>): string {
  const part = finding.part === undefined ? '' : `#${finding.part}`;
  return `${rule}:${finding.subjects.join('+')}${part}`;
}

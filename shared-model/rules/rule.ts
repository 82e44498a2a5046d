import type { z } from 'zod';
import type { QuestionId, RuleResult } from '../findings/finding.ts';
import type { Measures } from '../measures/values.ts';
import type { Scene } from '../scene/types.ts';

/** live: every frame of a drag; settle: about 150 ms after; asked: on request. */
export type Tier = 'live' | 'settle' | 'asked';

/** A rule's declaration: plain data, readable without running anything. */
interface RuleDeclaration<Options extends z.ZodObject> {
  /** "group/name": also the path of the source, the page and the test. Never reused. */
  readonly id: `${QuestionId}/${string}`;
  /** What is checked, as a plain question. */
  readonly asks: string;
  /** Why it matters to a child, in words a new guide understands. */
  readonly why: string;
  readonly tier: Tier;
  /** Keys into standards ("A01", "class rule", "common practice"). */
  readonly sources: readonly string[];
  /** Strict zod object; every option has a default. */
  readonly options: Options;
  /** message key -> text with {values}. */
  readonly messages: Readonly<Record<string, string>>;
}

interface RuleContext<Options> {
  readonly scene: Scene;
  readonly measures: Measures;
  readonly options: Options;
  /** False: whoever asks wants to know what is found, and no fix. */
  readonly proposes: boolean;
}

export interface Rule<Options extends z.ZodObject = z.ZodObject> extends RuleDeclaration<Options> {
  /** Reads only its context. Never throws on any classroom the schema accepts. */
  judge(context: RuleContext<z.output<Options>>): RuleResult;
}

/** Keeps the option type while declaring; the registry holds rules of every option, each asked with options its own schema read. */
export function defineRule<Options extends z.ZodObject>(rule: Rule<Options>): Rule {
  return rule as unknown as Rule;
}

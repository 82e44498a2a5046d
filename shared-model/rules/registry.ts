import type { Rule } from './rule.ts';

/** Every rule, in the order of the nine questions. One line a rule. */
export const rules: readonly Rule[] = [];

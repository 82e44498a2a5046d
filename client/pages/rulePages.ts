import type { RulePage } from './readRulePage.ts';

const files = import.meta.glob<RulePage>(['../../shared-model/rules/*/*.md', '!../../shared-model/rules/generated/*'], {
  eager: true,
  import: 'default',
});

/** Every rule's page by the rule's id, in the order of the nine questions as far as the folders go. Fetched when the first is opened. */
export const rulePages: ReadonlyMap<string, RulePage> = new Map(
  Object.entries(files).map(([path, page]) => [path.replace(/^.*\/rules\//, '').replace(/\.md$/, ''), page]),
);

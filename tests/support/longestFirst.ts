import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files and folders that take longest, in the order in which they begin: nothing long is left alone at the end. */
const longest = [
  // What a page is opened for most often.
  ...['frame', 'states', 'threeUsers', 'rulePages', 'proveMats', 'placing', 'mendWays'].map((name) => `tests/browser/${name}.test`),
  'tests/browser',
  ...['matProof', 'mats', 'matRasters', 'ways.clipper'].map((name) => `tests/reference/${name}.test`),
  'tests/property',
  'tests/reference',
  'tests/fault',
  'tests/load',
  'tests/unit/analysis',
  'tests/unit/server',
];

/** In a fresh clone nothing is known of how long a file takes, and its size says little. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const rank = ({ moduleId }: TestSpecification): number => {
      const path = relative(this.ctx.config.root, moduleId);
      const at = longest.findIndex((folder) => path.startsWith(folder));
      return at === -1 ? longest.length : at;
    };
    return sorted
      .map((file, i) => ({ file, i }))
      .sort((p, q) => rank(p.file) - rank(q.file) || p.i - q.i)
      .map(({ file }) => file);
  }
}

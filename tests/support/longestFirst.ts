import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders whose files take longest, in the order in which they begin: nothing long is left alone at the end. */
const longest = ['tests/browser', 'tests/property', 'tests/reference', 'tests/fault', 'tests/load'];

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

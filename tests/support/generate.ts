import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { generatedFiles } from './generatedFiles.ts';

/** `npm run generate`: writes every generated file anew. A test fails when one is stale. */
const house = resolve(import.meta.dirname, '../..');
for (const { path, text } of generatedFiles()) {
  writeFileSync(resolve(house, path), text);
  console.log(`wrote ${path}`);
}

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { generatedFiles } from '#tests/support/generatedFiles.ts';

const house = resolve(import.meta.dirname, '../../..');

it.each(generatedFiles().map((file) => [file.path, file.text]))('%s is fresh (else: npm run generate)', (path, text) => {
  expect(readFileSync(resolve(house, path), 'utf8')).toBe(text);
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const lock = JSON.parse(readFileSync(new URL('../../../package-lock.json', import.meta.url), 'utf8')) as {
  packages: Record<string, { version: string }>;
};
const copiesOf = (name: string) => Object.keys(lock.packages).filter((path) => path.endsWith(`node_modules/${name}`));

describe('the merging library', () => {
  it("is there once: two copies do not know each other's types, and documents silently fall apart", () => {
    expect(copiesOf('yjs')).toEqual(['node_modules/yjs']);
    expect(copiesOf('y-protocols')).toEqual(['node_modules/y-protocols']);
    expect(lock.packages['node_modules/yjs']?.version).toMatch(/^13\.6\./);
  });
});

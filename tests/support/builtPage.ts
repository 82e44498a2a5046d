import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const house = resolve(import.meta.dirname, '../..');

/** Builds the page unless the build is newer than everything it is made of. @returns the folder it is in */
export async function builtPage(): Promise<string> {
  const folder = join(house, 'dist');
  const page = join(folder, 'sw.js');
  const sources = ['client', 'shared-model', 'vite.config.ts', 'package.json'].map((path) => newest(join(house, path)));
  if (existsSync(page) && statSync(page).mtimeMs > Math.max(...sources)) return folder;
  // The page as it is served: a test runner's own NODE_ENV would build React for developers into it.
  const own = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ configFile: join(house, 'vite.config.ts'), logLevel: 'error' });
  } finally {
    process.env.NODE_ENV = own;
  }
  return folder;
}

/** Time of the last change in a folder, ms. */
function newest(path: string): number {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';

const dist = resolve(import.meta.dirname, '../../dist');

/** Gzipped bytes that a browser needs before the first paint of a sheet: the page, its scripts and styles. Needs a build. */
export function firstLoadBytes(): { path: string; bytes: number }[] {
  if (!existsSync(resolve(dist, 'index.html'))) throw new Error('no build in dist: run npm run build first');
  const page = readFileSync(resolve(dist, 'index.html'), 'utf8');
  const linked = [...page.matchAll(/(?:src|href)="\/?([^"]+\.(?:js|css))"/g)].map((m) => m[1] as string);
  return ['index.html', ...new Set(linked)].map((path) => ({
    path,
    bytes: gzipSync(readFileSync(resolve(dist, path)), { level: 9 }).length,
  }));
}

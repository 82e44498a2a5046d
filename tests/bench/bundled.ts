import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/**
 * Loads a module of the bench as the page gets it: bundled. The loader that runs our scripts wraps every function to
 * keep its name, which makes the analyser about three times slower than in the page.
 */
export async function loadBundled<T>(path: string): Promise<T> {
  const house = resolve(import.meta.dirname, '../..');
  const outDir = resolve(house, 'node_modules/.cache/bench');
  await build({
    configFile: false,
    root: house,
    logLevel: 'error',
    build: { ssr: resolve(import.meta.dirname, path), outDir, emptyOutDir: true, minify: false, target: 'node20' },
  });
  return import(pathToFileURL(resolve(outDir, path.replace(/\.ts$/, '.js'))).href);
}

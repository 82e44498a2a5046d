import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { readRulePage } from './client/pages/readRulePage.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The page opens with the server gone; a new version waits until the person asks for it. */
const openableOffline = () =>
  VitePWA({
    registerType: 'prompt',
    injectRegister: false,
    manifest: {
      name: 'Lowshelf',
      short_name: 'Lowshelf',
      description: 'Lay out a classroom and its shelves, and see what the layout does to the children.',
      display: 'standalone',
      background_color: '#DDD5C3',
      theme_color: '#DDD5C3',
      icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
    },
    workbox: {
      globPatterns: ['**/*.{js,css,html,svg,wasm,json}', '**/*-latin-*.woff2'],
      navigateFallback: 'index.html',
      // Pages only: nothing that the server answers itself.
      navigateFallbackDenylist: [/^\/(?:api|sync|health)/],
      maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
    },
  });

/** Pages of the checks become data here: the browser is sent no markup to read. */
const rulePages = () => ({
  name: 'rule-pages',
  enforce: 'pre' as const,
  transform: (text: string, id: string) =>
    /shared-model\/rules\/[\w-]+\/[\w-]+\.md$/.test(id)
      ? { code: `export default ${JSON.stringify(readRulePage(text))}`, map: null, moduleType: 'js' as const }
      : undefined,
});

/** What no page of ours does: schemas are never written as JSON schema, drawings never play. Left out of what a tablet fetches first. */
const leftOut = () => ({
  name: 'left-out',
  enforce: 'pre' as const,
  resolveId(source: string, importer: string | undefined) {
    if (/\/zod\/v4\/classic\/schemas\.js$/.test(importer ?? '') && /\/core\/(?:to-json-schema|json-schema-processors)\.js$/.test(source))
      return here('./client/leftOut/jsonSchema.ts');
    if (/\/konva\/lib\/_CoreInternals\.js$/.test(importer ?? '') && source.endsWith('/Tween.js')) return here('./client/leftOut/tween.ts');
    return undefined;
  },
});

/** What is left out on purpose (client/leftOut) is missing on purpose, and nobody who starts the app waits to read timings. */
const quiet = { importIsUndefined: false, pluginTimings: false };

export default defineConfig({
  root: here('./client'),
  plugins: [leftOut(), rulePages(), react(), openableOffline()],
  resolve: {
    dedupe: ['yjs'],
    // The core of the drawing library; its shapes are picked in client/ui/drawingShapes.ts.
    alias: [{ find: /^react-konva$/, replacement: 'react-konva/lib/ReactKonvaCore.js' }],
  },
  // `npm run dev` shares through a server that was started beside it.
  server: { proxy: { '^/sync/[\\w-]{22,}$': { target: 'ws://127.0.0.1:8787', ws: true } } },
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 1500,
    // What comes together comes in one file each, which is shorter than many: the page, the plan with its lists, the front with its own.
    rolldownOptions: {
      checks: quiet,
      output: {
        codeSplitting: {
          groups: [
            { name: 'page', test: /\/client\/main\.tsx$/, priority: 3 },
            { name: 'room', test: /\/client\/sheets\/RoomSheet\.tsx$/, priority: 2 },
            { name: 'front', test: /\/client\/(?:front\/Front|lists\/TrayList)\.tsx$/, priority: 1 },
          ],
        },
      },
    },
  },
  // The solver asks for it where there is Node, so never in a browser.
  worker: { format: 'es', rolldownOptions: { external: ['node:module'], checks: quiet } },
  test: {
    root: here('.'),
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 90_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // What comes a frame later, on a machine busy with other things.
    expect: { poll: { timeout: 15_000, interval: 100 } },
    // Nothing of ours keeps state between files, and reading every module anew for each took most of the time.
    isolate: false,
    unstubGlobals: true,
    restoreMocks: true,
    // Only tests know the test runner's own parts; a build does without.
    ...(process.env.VITEST && { sequence: { sequencer: (await import('./tests/support/longestFirst.ts')).default } }),
  },
} as Parameters<typeof defineConfig>[0]);

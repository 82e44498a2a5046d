import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('./client'),
  plugins: [react()],
  resolve: { dedupe: ['yjs'] },
  build: { outDir: here('./dist'), emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  test: {
    root: here('.'),
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    maxWorkers: 2,
  },
} as Parameters<typeof defineConfig>[0]);

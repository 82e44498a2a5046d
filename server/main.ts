import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { greeting } from './addresses.ts';
import { serve } from './serve.ts';
import { memoryStorage } from './storage/memoryStorage.ts';
import { sqliteStorage } from './storage/sqliteStorage.ts';
import type { Storage } from './storage/storage.ts';

const folder = fileURLToPath(new URL('..', import.meta.url));
const say = (text: string): boolean => process.stdout.write(`${text}\n`);

function portOf(text: string | undefined): number {
  const port = Number(text ?? 8787);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new Error(`PORT is "${text}"; it has to be a whole number from 0 to 65535.`);
}

function storageOf(data: string | undefined): Storage {
  if (data === 'memory') return memoryStorage();
  return sqliteStorage(join(data ?? join(folder, 'data'), 'lowshelf.sqlite'));
}

try {
  const { PORT, HOST = '127.0.0.1', DATA, ORIGINS = '' } = process.env;
  const wanted = portOf(PORT);
  const serving = await serve({
    host: HOST,
    port: wanted,
    pages: join(folder, 'dist'),
    storage: storageOf(DATA),
    origins: ORIGINS.split(',').filter((origin) => origin !== ''),
    log: (text) => process.stderr.write(`${text}\n`),
  });
  say(greeting(HOST, wanted, serving.port));
  const stop = (): void => {
    serving.close().then(
      () => process.exit(0),
      (error: unknown) => {
        process.stderr.write(`Stopped with trouble: ${String(error)}\n`);
        process.exit(1);
      },
    );
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}

import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SOCKET_PATH } from '#model/document/wire.ts';
import { type ServeOptions, type Serving, serve } from '#server/serve.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';

export interface TestServer extends Serving {
  readonly http: string;
  readonly socket: string;
  readonly said: readonly string[];
}

/** A server on a free port of this machine, in this process. */
export async function startServer(options: Partial<ServeOptions> = {}): Promise<TestServer> {
  const said: string[] = [];
  const serving = await serve({
    host: '127.0.0.1',
    port: 0,
    pages: join(tmpdir(), 'lowshelf-no-pages'),
    storage: options.storage ?? memoryStorage(),
    ...options,
    log: (text) => said.push(text),
    rooms: { linger: 20, rest: 50, ...options.rooms },
  });
  return {
    ...serving,
    said,
    http: `http://127.0.0.1:${serving.port}`,
    socket: `ws://127.0.0.1:${serving.port}${SOCKET_PATH}`,
  };
}

/** An empty folder of its own, in the system's place for such. */
export const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'lowshelf-'));

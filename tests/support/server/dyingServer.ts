import { join } from 'node:path';
import { serve } from '#server/serve.ts';
import { sqliteStorage } from '#server/storage/sqliteStorage.ts';
import type { Storage } from '#server/storage/storage.ts';

/**
 * A server in a process of its own that dies by SIGKILL around its nth commit.
 * Arguments: the data folder, before | after | never, n.
 */
const [folder = '', when = 'never', nth = '1'] = process.argv.slice(2);
const under = sqliteStorage(join(folder, 'lowshelf.sqlite'));
let commits = 0;
const die = (): Promise<never> => {
  process.kill(process.pid, 'SIGKILL');
  return new Promise(() => undefined);
};
const storage: Storage = {
  ...under,
  commit: async (entries) => {
    const isLast = ++commits === Number(nth);
    if (isLast && when === 'before') return die();
    await under.commit(entries);
    // Committed, and nobody was told: neither an echo nor a broadcast has gone out.
    if (isLast && when === 'after') return die();
  },
};
const serving = await serve({ host: '127.0.0.1', port: 0, pages: folder, storage, log: (text) => process.stderr.write(`${text}\n`) });
process.stdout.write(`port ${serving.port}\n`);
process.once('SIGTERM', () => void serving.close().then(() => process.exit(0)));

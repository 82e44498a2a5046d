import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { SOCKET_PATH } from '#model/document/wire.ts';

export interface SpawnedServer {
  readonly process: ChildProcess;
  readonly http: string;
  readonly socket: string;
  /** All that it printed so far. */
  output(): string;
  /** The signal or status that it ended with. */
  readonly ended: Promise<NodeJS.Signals | number | null>;
}

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** Runs a script of the repository in a process of its own, until it says its port; killed at the latest after a minute. */
export async function spawnServer(script: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<SpawnedServer> {
  const child = spawn(process.execPath, ['--import', 'tsx', script, ...args], { cwd: root, env: { ...process.env, ...env } });
  const life = setTimeout(() => child.kill('SIGKILL'), 60_000);
  let printed = '';
  const ended = new Promise<NodeJS.Signals | number | null>((resolve) =>
    child.once('exit', (code, signal) => {
      clearTimeout(life);
      resolve(signal ?? code);
    }),
  );
  const port = await new Promise<number>((resolve, reject) => {
    const look = (part: Buffer): void => {
      printed += part.toString();
      const found = /(?:port |http:\/\/127\.0\.0\.1:)(\d+)/.exec(printed);
      if (found) resolve(Number(found[1]));
    };
    child.stdout.on('data', look);
    child.stderr.on('data', (part: Buffer) => {
      printed += part.toString();
    });
    void ended.then((how) => reject(new Error(`it ended with ${how}: ${printed}`)));
  });
  return { process: child, http: `http://127.0.0.1:${port}`, socket: `ws://127.0.0.1:${port}${SOCKET_PATH}`, output: () => printed, ended };
}

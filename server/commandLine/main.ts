import { readFileSync } from 'node:fs';
import { runCheck, status } from './check.ts';

// A reader that has seen enough (`| head`) closes the pipe; that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  process.exitCode = await runCheck(process.argv.slice(2), {
    read: (file) => readFileSync(file === '-' ? 0 : file, 'utf8'),
    say: (text) => process.stdout.write(`${text}\n`),
    complain: (text) => process.stderr.write(`${text}\n`),
  });
} catch (error) {
  process.stderr.write(`The check itself broke; nothing is said of the room. ${(error as Error).stack ?? error}\n`);
  process.exitCode = status.broken;
}

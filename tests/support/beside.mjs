// Runs scripts of package.json beside one another, since most of them keep one processor busy at most; fails when one of them does.
import { spawn } from 'node:child_process';

const run = (script) =>
  new Promise((done) => {
    const child = spawn('npm', ['run', '-s', script], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (text) => {
        said += text;
      });
    child.once('error', ({ message }) => done({ script, said: message, code: 1 }));
    child.once('close', (code) => done({ script, said, code: code ?? 1 }));
  });

// What each says stands together, in the order in which they were asked for.
for (const { script, said, code } of await Promise.all(process.argv.slice(2).map(run))) {
  if (said.trim() !== '') console.error(said.trimEnd());
  if (code === 0) continue;
  console.error(`\nnpm run ${script} failed (${code}).\n`);
  process.exitCode = 1;
}

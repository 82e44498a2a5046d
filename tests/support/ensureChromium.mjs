// Browser tests drive Debian's Chromium; a fresh machine has none. Runs before node_modules exist, so plain Node only.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';
if (!existsSync(chromium)) {
  console.log(`No browser at ${chromium}: installing Debian's chromium for the browser tests.`);
  try {
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    execFileSync('apt-get', ['update', '-qq'], quiet);
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'], quiet);
  } catch (error) {
    console.error(`Chromium could not be installed (${error.message}).`);
    console.error('Install it by hand, or set CHROMIUM to the path of a Chromium or Chrome, and run the tests again.');
    process.exit(1);
  }
}

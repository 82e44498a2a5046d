// Installs what the tests need. Runs before node_modules exist, so plain Node only.
import { spawnSync } from 'node:child_process';

// Where no ready-made build of the database is to be had, npm compiles one: as people get it in 108 s, which nothing in the tests waits for; like this in 35 s.
const quickBuild = { CFLAGS: '-O0', CXXFLAGS: '-O0', JOBS: 'max' };
const { status, error } = spawnSync('npm', ['install', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'], {
  stdio: 'inherit',
  env: { ...quickBuild, ...process.env },
  shell: process.platform === 'win32',
});
if (error) console.error(`npm could not be started (${error.message}).`);
process.exitCode = status ?? 1;

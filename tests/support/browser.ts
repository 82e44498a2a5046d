import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { runs } from './runs.ts';

const house = resolve(import.meta.dirname, '../..');

/** The three sizes the app is looked at in. */
export const sizes = {
  wide: { width: 1440, height: 900 },
  tablet: { width: 1024, height: 768 },
  phone: { width: 390, height: 844 },
} as const;
export type SizeName = keyof typeof sizes;

/** Screens on which a test is done again: each in `npm run proof`, the last, where room is shortest, in `npm test`. */
export const screens = <S extends SizeName>(...all: readonly S[]): readonly S[] => all.slice(-runs(1, all.length));

/** Where a page is served: http://… */
export interface ServedAt {
  readonly address: string;
}

export interface RunningServer extends ServedAt {
  stop(): Promise<void>;
  kill(): Promise<void>;
}

/** Starts the real server on a free loopback port. With `data` it keeps its classrooms there, else in a folder of its own that goes with it. */
export async function startServer(options: { data?: string; port?: number } = {}): Promise<RunningServer> {
  const data = options.data ?? mkdtempSync(join(tmpdir(), 'lowshelf-'));
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: house,
    env: { ...process.env, HOST: '127.0.0.1', PORT: String(options.port ?? 0), DATA: data },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await addressOf(child);
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    const gone = new Promise((done) => child.once('exit', done));
    if (child.exitCode === null && child.signalCode === null) {
      child.kill(signal);
      await gone;
    }
    if (options.data === undefined) rmSync(data, { recursive: true, force: true });
  };
  return { address, stop: () => end('SIGTERM'), kill: () => end('SIGKILL') };
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((done, fail) => {
    let said = '';
    const timer = setTimeout(() => fail(new Error(`the server said no address in 20 s: ${said}`)), 20_000);
    const listen = (chunk: Buffer): void => {
      said += String(chunk);
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (!found) return;
      clearTimeout(timer);
      done(found[0]);
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    child.once('exit', (code) => {
      clearTimeout(timer);
      fail(new Error(`the server ended with ${code}: ${said}`));
    });
  });
}

/** For tests, whose pages do not live long enough for the last stage of the engine's translation to pay: a tenth less to compute. Never for what is timed. */
export const shortLived = ['--js-flags=--no-turbofan'] as const;

export function openBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}

/**
 * A person's own browser: a context with nothing kept, at one of the three sizes; the tablet and the phone are touched.
 * `keepsPage`: the page is kept for the time without a server, which fetches all of it in the background.
 */
export function openPerson(browser: Browser, size: SizeName, keepsPage = false): Promise<BrowserContext> {
  return browser.newContext({
    viewport: sizes[size],
    hasTouch: size !== 'wide',
    reducedMotion: 'reduce',
    serviceWorkers: keepsPage ? 'allow' : 'block',
  });
}

/** What axe finds on a page, one line each; empty when nothing. Every rule is asked; what passes is not told of, which took most of the time. */
export async function axeFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`);
}

import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshFolder, startServer, type TestServer } from '../../../support/server/startServer.ts';

const folder = freshFolder();
const pages = join(folder, 'dist');
let server: TestServer;

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: Buffer;
}
/** As it is written: fetch would tidy the path up first. */
function get(path: string, options: { method?: string; headers?: Record<string, string> } = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: server.port, path, ...options }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

beforeAll(async () => {
  mkdirSync(join(pages, 'assets'), { recursive: true });
  mkdirSync(join(folder, 'dist-other'));
  const script = `console.log(${JSON.stringify('x'.repeat(4000))})`;
  for (const [name, text] of Object.entries({
    'dist/index.html': '<!doctype html><title>Lowshelf</title>',
    'dist/assets/main-abc.js': script,
    'dist/assets/font.woff2': 'font',
    'dist/assets/solver.wasm': 'wasm',
    'dist/manifest.webmanifest': '{}',
    'dist/notes.secret': 'secret',
    'secret.txt': 'secret',
    'dist-other/secret.txt': 'secret',
  }))
    writeFileSync(join(folder, name), text);
  symlinkSync(join(folder, 'secret.txt'), join(pages, 'link.txt'));
  server = await startServer({ pages });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the page', () => {
  it('is handed out with its type, and asked for again each time', async () => {
    const page = await get('/');
    expect(page.status).toBe(200);
    expect(page.headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
    });
    expect(page.body.toString()).toContain('Lowshelf');
    const again = await get('/?from=here', { headers: { 'if-none-match': String(page.headers.etag) } });
    expect([again.status, again.body.length]).toEqual([304, 0]);
  });

  it('has its named files kept for good, compressed where that helps', async () => {
    const script = await get('/assets/main-abc.js', { headers: { 'accept-encoding': 'gzip, br' } });
    expect(script.headers).toMatchObject({
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'public, max-age=31536000, immutable',
      'content-encoding': 'gzip',
    });
    expect(gunzipSync(script.body).toString()).toContain('xxxx');
    expect((await get('/assets/main-abc.js')).headers['content-encoding']).toBeUndefined();
    expect((await get('/assets/solver.wasm')).headers['content-type']).toBe('application/wasm');
    expect((await get('/assets/font.woff2')).headers['content-type']).toBe('font/woff2');
    expect((await get('/manifest.webmanifest')).headers['content-type']).toContain('application/manifest+json');
  });

  it('says what it may load: only what comes from this server', async () => {
    const policy = String((await get('/')).headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).toContain(`connect-src 'self' ws://127.0.0.1:${server.port}`);
    expect(policy).toContain("frame-ancestors 'none'");
    const odd = await get('/', { headers: { host: "x; script-src 'unsafe-inline'" } });
    expect(String(odd.headers['content-security-policy'])).not.toContain("script-src 'unsafe-inline'");
  });

  it('gives out nothing beside its folder', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/assets/../../secret.txt',
      '/..%5csecret.txt',
      '/../dist-other/secret.txt',
      '/link.txt',
      '//etc/passwd',
      '/notes.secret',
      '/assets',
      '/%00',
      '/%zz',
      '/nothing.js',
      'secret.txt',
    ]) {
      const answer = await get(path);
      expect([path, [400, 404].includes(answer.status), answer.body.toString().includes('secret')]).toEqual([path, true, false]);
    }
  });

  it('takes GET and HEAD only', async () => {
    const head = await get('/', { method: 'HEAD' });
    expect([head.status, head.body.length, Number(head.headers['content-length'])]).toEqual([200, 0, 38]);
    const post = await get('/', { method: 'POST' });
    expect([post.status, post.headers.allow]).toEqual([405, 'GET, HEAD']);
  });

  it('says what to do when it was not built', async () => {
    const bare = await startServer();
    const answer = await fetch(bare.http);
    expect([answer.status, await answer.text()]).toEqual([503, expect.stringContaining('npm run build')]);
    await bare.close();
  });
});

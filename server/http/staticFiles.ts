import { createHash } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import type { IncomingMessage, OutgoingHttpHeaders, RequestListener, ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { contentTypes, isCompact } from './contentTypes.ts';
import { securityHeaders } from './headers.ts';

interface Served {
  readonly changed: number;
  readonly type: string;
  readonly tag: string;
  readonly plain: Buffer;
  readonly zipped: Buffer | null;
}

const zip = promisify(gzip);
const NOT_BUILT = 'The page is not built yet. Run "npm run build" in the folder of Lowshelf, then load this again.\n';

/** Hands out the built page. Only files in its folder, only kinds of files that a page has, only GET and HEAD. */
export function serveFiles(root: string): RequestListener {
  const cache = new Map<string, Served>();

  const find = async (path: string): Promise<Served | null> => {
    const type = contentTypes[extname(path)];
    if (type === undefined) return null;
    // Resolved on the disk, so that neither ".." nor a link leads out of the folder.
    const folder = await realpath(root);
    const file = await realpath(join(folder, path));
    if (!file.startsWith(folder + sep)) return null;
    const found = await stat(file);
    if (!found.isFile()) return null;
    const known = cache.get(file);
    if (known?.changed === found.mtimeMs) return known;
    const plain = await readFile(file);
    const zipped = isCompact(extname(path)) || plain.length < 1_024 ? null : await zip(plain);
    const tag = `"${createHash('sha256').update(plain).digest('base64url').slice(0, 22)}"`;
    const served = { changed: found.mtimeMs, type, tag, plain, zipped };
    cache.set(file, served);
    return served;
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const secure = securityHeaders(request.headers.host);
    const say = (status: number, text: string): void => {
      response.writeHead(status, { ...secure, 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' });
      response.end(request.method === 'HEAD' ? undefined : text);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.setHeader('allow', 'GET, HEAD');
      say(405, 'Only GET and HEAD.\n');
      return;
    }
    const path = pathOf(request.url ?? '/');
    const served = path === null ? null : await find(path).catch(() => null);
    if (path === null) say(400, 'This address cannot be read.\n');
    else if (served) sendFile(request, response, path, served, secure);
    else if (path === '/index.html') say(503, NOT_BUILT);
    else say(404, 'There is nothing under this address.\n');
  };

  return (request, response) => {
    answer(request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  };
}

function sendFile(request: IncomingMessage, response: ServerResponse, path: string, served: Served, secure: OutgoingHttpHeaders): void {
  const headers = {
    ...secure,
    'content-type': served.type,
    etag: served.tag,
    vary: 'accept-encoding',
    // Files in assets carry a hash of what is in them in their name.
    'cache-control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  if (request.headers['if-none-match']?.includes(served.tag)) {
    response.writeHead(304, headers);
    response.end();
    return;
  }
  const takesZipped = /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
  const body = takesZipped && served.zipped ? served.zipped : served.plain;
  response.writeHead(200, {
    ...headers,
    'content-length': body.length,
    ...(body === served.zipped && { 'content-encoding': 'gzip' }),
  });
  response.end(request.method === 'HEAD' ? undefined : body);
}

/** The path asked for, "/" being the page; null when it is none. */
function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? '');
    if (!path.startsWith('/') || path.includes('\0') || path.includes('\\')) return null;
    return path === '/' ? '/index.html' : path;
  } catch {
    return null;
  }
}

import { SOCKET_PATH } from '#model/document/wire.ts';

/** The socket's address on the server that the page came from; null when it came from none (a file). */
export function serverOf(page: Pick<Location, 'protocol' | 'host'>): string | null {
  if (page.protocol === 'https:') return `wss://${page.host}${SOCKET_PATH}`;
  return page.protocol === 'http:' ? `ws://${page.host}${SOCKET_PATH}` : null;
}

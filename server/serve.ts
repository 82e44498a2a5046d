import { createServer } from 'node:http';
import { type WebSocket, WebSocketServer } from 'ws';
import { closes, LARGEST_MESSAGE, SOCKET_PATH } from '#model/document/wire.ts';
import { addressIn, admit, isOwnPage } from './access/door.ts';
import { serveFiles } from './http/staticFiles.ts';
import { listen } from './listen.ts';
import type { Storage } from './storage/storage.ts';
import { createRooms, type RoomsOptions, sayError } from './sync/rooms.ts';
import { serveSocket } from './sync/serveSocket.ts';

export interface ServeOptions {
  readonly host: string;
  /** 0: any free one */
  readonly port: number;
  /** Folder of the built page. */
  readonly pages: string;
  readonly storage: Storage;
  /** Origins of other pages that may open a socket. */
  readonly origins?: readonly string[];
  readonly log: (text: string) => void;
  readonly rooms?: Partial<Omit<RoomsOptions, 'log'>>;
  /** ms between two looks whether a connection still answers */
  readonly heartbeat?: number;
  readonly mostConnections?: number;
}

export interface Serving {
  readonly port: number;
  /** Commits what has come, says good-bye, closes the storage. */
  close(): Promise<void>;
}

/** Looks that a connection may leave unanswered. */
const PATIENT_LOOKS = 2;

/** One server: the page and the socket on one port. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const { storage, log } = options;
  const http = createServer(serveFiles(options.pages));
  const sockets = new WebSocketServer({ noServer: true, maxPayload: LARGEST_MESSAGE, perMessageDeflate: false, clientTracking: true });
  const rooms = createRooms(storage, { linger: 10_000, rest: 3_000, compactAfter: 50, compactOpenAfter: 2_000, ...options.rooms, log });
  /** How many looks a connection has not answered. */
  const silent = new WeakMap<WebSocket, number>();

  http.on('upgrade', (request, socket, head) => {
    socket.on('error', () => socket.destroy());
    const address = addressIn(request.url ?? '', SOCKET_PATH);
    const isOwn = isOwnPage(request.headers.origin, request.headers.host, options.origins ?? []);
    if (address === null || !isOwn) {
      socket.end(`HTTP/1.1 ${address === null ? '404 Not Found' : '403 Forbidden'}\r\nConnection: close\r\n\r\n`);
      return;
    }
    sockets.handleUpgrade(request, socket, head, (opened) => {
      opened.on('pong', () => silent.set(opened, 0));
      opened.on('message', () => silent.set(opened, 0));
      opened.on('error', () => opened.terminate());
      if (sockets.clients.size > (options.mostConnections ?? 500)) opened.close(closes.tryLater, 'too many connections');
      else void letIn(opened, address);
    });
  });

  const letIn = async (socket: WebSocket, address: string): Promise<void> => {
    // Held until the door has decided: what comes before that would be lost.
    socket.pause();
    try {
      const admitted = await admit(address, storage);
      if (admitted) return serveSocket(socket, admitted, rooms, log);
      socket.resume();
      socket.close(closes.unknown, 'no such address');
    } catch (error) {
      log(`Could not look up an address: ${sayError(error)}.`);
      socket.resume();
      socket.close(closes.cannotSave, 'could not be read');
    }
  };

  const beat = setInterval(() => {
    for (const socket of sockets.clients) {
      const looks = silent.get(socket) ?? 0;
      silent.set(socket, looks + 1);
      // A large message on a slow line keeps the answer waiting behind it.
      if (looks > PATIENT_LOOKS) socket.terminate();
      else socket.ping();
    }
  }, options.heartbeat ?? 25_000);
  beat.unref();

  const port = await listen(http, options.host, options.port);
  let closing: Promise<void> | null = null;
  const close = async (): Promise<void> => {
    clearInterval(beat);
    const closed = new Promise<void>((resolve) => http.close(() => resolve()));
    await rooms.close(closes.goingAway, 'the server stops');
    for (const socket of sockets.clients) socket.close(closes.goingAway, 'the server stops');
    await Promise.race([allClosed(sockets), new Promise((resolve) => setTimeout(resolve, 1_000))]);
    for (const socket of sockets.clients) socket.terminate();
    http.closeAllConnections();
    await closed;
    await storage.close();
  };
  return {
    port,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}

async function allClosed(sockets: WebSocketServer): Promise<void> {
  await Promise.all([...sockets.clients].map((socket) => new Promise((resolve) => socket.once('close', resolve))));
}

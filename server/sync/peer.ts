import type { WebSocket } from 'ws';
import type { Needs } from './needs.ts';

/** bytes not yet taken by a slow receiver, from which on it hears no more of who is here */
const SLOW = 512 * 1024;
/** bytes from which on it is let go: it comes back and asks for what it lacks */
const TOO_SLOW = 8 * 1024 * 1024;
/** ms that a socket has to answer a close */
const PATIENCE = 2_000;

/** One connection, as a room sees it. */
export interface Peer {
  readonly mayChange: boolean;
  /** What it sent that waits for something missing. */
  readonly needs: Needs;
  /** Client ids whose presence it published. */
  readonly clients: Set<number>;
  /** Marks that cannot be sent back yet. */
  readonly marks: number[];
  /** @param kind presence may be skipped: the next one says it all again */
  send(bytes: Uint8Array, kind?: 'presence'): void;
  close(code: number, reason: string): void;
}

export function createPeer(socket: WebSocket, mayChange: boolean): Peer {
  let isClosing = false;
  const close = (code: number, reason: string): void => {
    if (isClosing) return;
    isClosing = true;
    socket.close(code, reason);
    // A socket whose buffer is full never gets to the close frame.
    setTimeout(() => socket.terminate(), PATIENCE).unref();
  };
  return {
    mayChange,
    needs: new Map(),
    clients: new Set(),
    marks: [],
    send: (bytes, kind) => {
      if (isClosing || socket.readyState !== socket.OPEN) return;
      if (kind === 'presence' && socket.bufferedAmount > SLOW) return;
      // What lies there before this message: a large first answer by itself is no sign of a slow receiver.
      if (socket.bufferedAmount > TOO_SLOW) {
        isClosing = true;
        socket.terminate();
        return;
      }
      socket.send(bytes, (error) => {
        if (error) socket.terminate();
      });
    },
    close,
  };
}

import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { Awareness } from 'y-protocols/awareness';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { keptOrigin } from '#model/document/origins.ts';
import { isFinal, messages, roles } from '#model/document/wire.ts';
import { LOOK_ONLY, wordsOf } from './wordsOf.ts';

/** Where the changes made here are, as far as the server has said. */
interface Shared {
  readonly server: 'saved' | 'saving' | 'offline' | 'refused' | 'alone';
  /** Changes made here that the server has not confirmed. */
  readonly waiting: number;
  readonly trouble: string | null;
}

export interface Connection {
  readonly awareness: Awareness;
  state(): Shared;
  /** The server sent what it has at least once since the page was opened. */
  hasMet(): boolean;
  /** What the server said that this address may do; null: it has said nothing yet. */
  mayChange(): boolean | null;
  /** Whether the server has confirmed what this client wrote up to that clock. Of an earlier visit: all of it or nothing. */
  isConfirmed(client: number, clock: number): boolean;
  /** Asks the server to put a remark into the classroom (remarkWish.ts). @returns false when it cannot be asked now */
  sendRemark(json: string): boolean;
  subscribe(listener: () => void): () => void;
  close(): void;
}

export interface ConnectOptions {
  /** ws: or wss: address up to the classroom's id; null: there is no server, the classroom is alone on this device. */
  readonly server: string | null;
  /** Changes of earlier visits that the server had not confirmed. */
  readonly waitingBefore?: number;
  readonly WebSocket?: typeof globalThis.WebSocket;
}

/** ms: the longest pause between two attempts */
const LONGEST_PAUSE = 5_000;

/**
 * Joins a document to the server. Never says "saved" before the server has sent back a mark that was sent
 * after everything that was made here, on the same connection: sending is not saving.
 */
export function connect(id: string, doc: Y.Doc, options: ConnectOptions): Connection {
  const awareness = new Awareness(doc);
  const listeners = new Set<() => void>();
  if (options.server === null) {
    const alone: Shared = { server: 'alone', waiting: 0, trouble: null };
    return {
      awareness,
      state: () => alone,
      hasMet: () => false,
      mayChange: () => null,
      isConfirmed: () => false,
      sendRemark: () => false,
      subscribe: () => () => undefined,
      close: () => awareness.destroy(),
    };
  }

  const before = options.waitingBefore ?? 0;
  /** Changes made here, counted; and up to which of them the server has confirmed. */
  let made = before;
  let confirmed = 0;
  /** This client's clock at each mark that is out, and at the last one that came back. */
  const clocks = new Map<number, number>();
  let confirmedClock = 0;
  /** This connection: the server's question what it lacks was answered, and a mark came back after that. */
  let isAnswered = false;
  let isConfirmed = false;
  let isMarkDue = false;
  let mayChange: boolean | null = null;
  let hasMet = false;
  let closedWith: number | null = null;
  let state: Shared = { server: 'offline', waiting: before, trouble: null };

  const provider = new WebsocketProvider(options.server, id, doc, {
    connect: false,
    awareness,
    // Tabs talk through the store's own channel, which knows what is kept.
    disableBc: true,
    maxBackoffTime: LONGEST_PAUSE,
    shouldReconnect: (event) => !isFinal(event.code),
    ...(options.WebSocket && { WebSocketPolyfill: options.WebSocket }),
  });

  const tell = (): void => {
    const next = judge();
    if (next.server === state.server && next.waiting === state.waiting && next.trouble === state.trouble) return;
    state = next;
    for (const listener of [...listeners]) listener();
  };
  const judge = (): Shared => {
    const waiting = made - confirmed;
    if (closedWith !== null && isFinal(closedWith)) return { server: 'refused', waiting, trouble: wordsOf(closedWith) };
    if (mayChange === false && waiting > 0) return { server: 'refused', waiting, trouble: LOOK_ONLY };
    if (!provider.wsconnected) return { server: 'offline', waiting, trouble: wordsOf(closedWith) };
    const isSaved = isConfirmed && waiting === 0;
    return { server: isSaved ? 'saved' : 'saving', waiting, trouble: isSaved ? null : wordsOf(closedWith) };
  };

  const sendMark = (): void => {
    isMarkDue = false;
    const socket = provider.ws;
    if (!isAnswered || mayChange === false || !provider.wsconnected || socket?.readyState !== socket?.OPEN) return;
    const encoder = encoding.createEncoder();
    encoding.writeVarUint(encoder, messages.mark);
    encoding.writeVarUint(encoder, made);
    clocks.set(made, Y.getState(doc.store, doc.clientID));
    socket?.send(encoding.toUint8Array(encoder));
  };
  /** One mark for all that happens in this turn of the loop, after the provider has sent it. */
  const markSoon = (): void => {
    if (isMarkDue) return;
    isMarkDue = true;
    setTimeout(sendMark, 0);
  };

  const readSync = provider.messageHandlers[messages.sync];
  provider.messageHandlers[messages.sync] = (encoder, decoder, ...rest) => {
    // The first byte says which part of the dance it is; 0: the server asks what it lacks.
    const isQuestion = decoder.arr[decoder.pos] === 0;
    readSync?.(encoder, decoder, ...rest);
    if (isQuestion) {
      isAnswered = true;
      markSoon();
    }
  };
  provider.messageHandlers[messages.mark] = (_encoder, decoder) => {
    confirmed = Math.max(confirmed, decoding.readVarUint(decoder));
    for (const [mark, clock] of clocks) {
      if (mark > confirmed) continue;
      confirmedClock = Math.max(confirmedClock, clock);
      clocks.delete(mark);
    }
    isConfirmed = true;
    closedWith = null;
    tell();
  };
  provider.messageHandlers[messages.role] = (_encoder, decoder) => {
    mayChange = decoding.readVarUint(decoder) === roles.change;
    if (!mayChange) isConfirmed = true;
    tell();
    for (const listener of [...listeners]) listener();
  };

  const onUpdate = (_update: Uint8Array, origin: unknown): void => {
    // Read from this device, not made now: the answer to the server's question carries it.
    if (origin === provider || origin === keptOrigin) return;
    made++;
    markSoon();
    tell();
  };
  doc.on('update', onUpdate);
  provider.on('status', ({ status }) => {
    if (status === 'disconnected') {
      isAnswered = false;
      isConfirmed = false;
    }
    tell();
  });
  provider.on('connection-close', (event) => {
    isAnswered = false;
    isConfirmed = false;
    closedWith = event?.code ?? null;
  });
  provider.on('closed', tell);
  provider.on('sync', (isSynced) => {
    if (isSynced) hasMet = true;
    tell();
    for (const listener of [...listeners]) listener();
  });
  const onOnline = (): void => {
    if (closedWith === null || !isFinal(closedWith)) provider.connect();
  };
  const target = globalThis as Partial<Pick<typeof globalThis, 'addEventListener' | 'removeEventListener'>>;
  target.addEventListener?.('online', onOnline);
  provider.connect();

  return {
    awareness,
    state: () => state,
    hasMet: () => hasMet,
    mayChange: () => mayChange,
    isConfirmed: (client, clock) => (client === doc.clientID ? clock < confirmedClock : before === 0 || confirmed >= before),
    sendRemark: (json) => {
      const socket = provider.ws;
      if (mayChange !== false || !provider.wsconnected || socket?.readyState !== socket?.OPEN) return false;
      const encoder = encoding.createEncoder();
      encoding.writeVarUint(encoder, messages.remark);
      encoding.writeVarString(encoder, json);
      socket?.send(encoding.toUint8Array(encoder));
      return true;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {
      target.removeEventListener?.('online', onOnline);
      doc.off('update', onUpdate);
      listeners.clear();
      provider.destroy();
      awareness.destroy();
    },
  };
}

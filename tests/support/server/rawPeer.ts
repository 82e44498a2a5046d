import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { messages } from '#model/document/wire.ts';

/** A connection that says exactly what a test wants, and writes down what it hears. */
export interface RawPeer {
  readonly socket: WebSocket;
  /** Every message so far, by kind. */
  readonly heard: { type: number; kind: number | null; body: Uint8Array; number: number | null }[];
  /** The code of the close, once it came. */
  readonly closed: Promise<number>;
  send(bytes: Uint8Array): void;
  update(update: Uint8Array): void;
  mark(number: number): void;
  /** A remark as a page that may only look sends it. */
  remark(json: string): void;
  ask(doc: Y.Doc): void;
  /** Marks that came back. */
  marks(): number[];
  /** Updates that came, each as it came. */
  updates(): Uint8Array[];
}

export async function rawPeer(url: string, options: { origin?: string } = {}): Promise<RawPeer> {
  const socket = new WebSocket(url, options);
  socket.binaryType = 'nodebuffer';
  const heard: RawPeer['heard'] = [];
  socket.on('message', (data) => heard.push(read(new Uint8Array(data as Buffer))));
  const closed = new Promise<number>((resolve) => socket.on('close', resolve));
  await new Promise((resolve, reject) => {
    socket.once('open', resolve);
    socket.once('error', reject);
  });
  socket.on('error', () => undefined);
  const send = (bytes: Uint8Array): void => socket.send(bytes);
  return {
    socket,
    heard,
    closed,
    send,
    update: (update) => send(syncMessage(2, update)),
    mark: (number) =>
      send(
        message((encoder) => {
          encoding.writeVarUint(encoder, messages.mark);
          encoding.writeVarUint(encoder, number);
        }),
      ),
    remark: (json) =>
      send(
        message((encoder) => {
          encoding.writeVarUint(encoder, messages.remark);
          encoding.writeVarString(encoder, json);
        }),
      ),
    ask: (doc) => send(syncMessage(0, Y.encodeStateVector(doc))),
    marks: () => heard.flatMap(({ type, number }) => (type === messages.mark && number !== null ? [number] : [])),
    updates: () => heard.flatMap(({ type, kind, body }) => (type === messages.sync && kind !== 0 ? [body] : [])),
  };
}

function read(data: Uint8Array): RawPeer['heard'][number] {
  const decoder = decoding.createDecoder(data);
  const type = decoding.readVarUint(decoder);
  if (type === messages.sync) {
    const kind = decoding.readVarUint(decoder);
    return { type, kind, body: decoding.readVarUint8Array(decoder), number: null };
  }
  if (type === messages.awareness) return { type, kind: null, body: decoding.readVarUint8Array(decoder), number: null };
  return { type, kind: null, body: new Uint8Array(), number: decoding.readVarUint(decoder) };
}

export function message(write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  write(encoder);
  return encoding.toUint8Array(encoder);
}

export const syncMessage = (kind: number, body: Uint8Array): Uint8Array =>
  message((encoder) => {
    encoding.writeVarUint(encoder, messages.sync);
    encoding.writeVarUint(encoder, kind);
    encoding.writeVarUint8Array(encoder, body);
  });

/** The updates that a document makes while `work` runs. */
export function updatesOf(doc: Y.Doc, work: () => void): Uint8Array[] {
  const made: Uint8Array[] = [];
  const note = (update: Uint8Array): void => {
    made.push(update);
  };
  doc.on('update', note);
  work();
  doc.off('update', note);
  return made;
}

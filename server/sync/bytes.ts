import * as encoding from 'lib0/encoding';
import * as awareness from 'y-protocols/awareness';
import * as sync from 'y-protocols/sync';
import type * as Y from 'yjs';
import { messages, roles } from '#model/document/wire.ts';

function message(type: number, write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

/** "What do you have that I lack?" */
export const question = (doc: Y.Doc): Uint8Array => message(messages.sync, (encoder) => sync.writeSyncStep1(encoder, doc));
/** What somebody with this state vector lacks. */
export const answer = (doc: Y.Doc, vector: Uint8Array): Uint8Array =>
  message(messages.sync, (encoder) => sync.writeSyncStep2(encoder, doc, vector));
export const update = (bytes: Uint8Array): Uint8Array => message(messages.sync, (encoder) => sync.writeUpdate(encoder, bytes));
export const mark = (number: number): Uint8Array => message(messages.mark, (encoder) => encoding.writeVarUint(encoder, number));
export const role = (mayChange: boolean): Uint8Array =>
  message(messages.role, (encoder) => encoding.writeVarUint(encoder, mayChange ? roles.change : roles.look));
export const presence = (of: awareness.Awareness, clients: number[]): Uint8Array =>
  message(messages.awareness, (encoder) => encoding.writeVarUint8Array(encoder, awareness.encodeAwarenessUpdate(of, clients)));

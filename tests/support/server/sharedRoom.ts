import { expect } from 'vitest';
import * as Y from 'yjs';
import { newClassroomId } from '#client/session/address.ts';
import { writeInto } from '#model/document/writeInto.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { ServedAt } from '#tests/support/browser.ts';
import { rawPeer } from './rawPeer.ts';

/** Puts a classroom on the server, as a colleague who shares it. @returns the address that opens it; a small room opens in half the time of the demo */
export async function sharedRoom({ address }: ServedAt, classroom: Classroom): Promise<string> {
  const id = newClassroomId();
  const doc = new Y.Doc();
  writeInto(doc, classroom);
  const peer = await rawPeer(`${address.replace('http', 'ws')}/sync/${id}`);
  peer.update(Y.encodeStateAsUpdate(doc));
  peer.mark(1);
  await expect.poll(peer.marks).toContain(1);
  peer.socket.close();
  return `${address}/#room=${id}`;
}

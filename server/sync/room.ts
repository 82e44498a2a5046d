import * as awarenessProtocol from 'y-protocols/awareness';
import * as Y from 'yjs';
import { openDocument } from '#model/document/openDocument.ts';
import { readRemarkWish, visitorName } from '#model/document/remarkWish.ts';
import { rootOf } from '#model/document/roots.ts';
import { closes } from '#model/document/wire.ts';
import { limits } from '#model/schema/limits.ts';
import type { Storage } from '../storage/storage.ts';
import * as bytes from './bytes.ts';
import type { Committer } from './committer.ts';
import { addNeeds, needsOf, settleNeeds } from './needs.ts';
import type { Peer } from './peer.ts';

/** One classroom that somebody has open. */
export interface Room {
  /** False once a commit failed or it was closed: who comes now gets a new room, read from what is committed. */
  isSound(): boolean;
  size(): number;
  join(peer: Peer): void;
  leave(peer: Peer): void;
  /** Changes from a peer. @throws when the bytes are no update. */
  take(peer: Peer, update: Uint8Array): void;
  /** What a peer lacks, once all that is in it is committed. */
  answer(peer: Peer, vector: Uint8Array): void;
  /** Sends the number back once all that the peer sent before is committed. */
  mark(peer: Peer, number: number): void;
  /** A remark of a peer that may only look. @throws when it is no remark. */
  remark(peer: Peer, json: string): void;
  presence(peer: Peer, update: Uint8Array): void;
  allPresence(peer: Peer): void;
  /** Number of updates in the storage's log. */
  logged(): number;
  /** That many of them were taken into a state. */
  tidied(count: number): void;
  close(code: number, reason: string): void;
  destroy(): void;
}

/** States of presence that one connection may publish: one person, and the ones it was before it reconnected. */
const MOST_CLIENTS = 16;

/**
 * @param onCommitted called after each group, once everybody was told.
 * @throws when what is stored cannot be read.
 */
export async function openRoom(
  id: string,
  storage: Storage,
  committer: Committer,
  onCommitted: (room: Room) => void = () => undefined,
): Promise<Room> {
  const doc = new Y.Doc();
  const stored = await storage.load(id);
  let logged = stored.updates.length;
  if (stored.snapshot) Y.applyUpdate(doc, stored.snapshot);
  for (const update of stored.updates) Y.applyUpdate(doc, update);

  const awareness = new awarenessProtocol.Awareness(doc);
  awareness.setLocalState(null);
  const peers = new Set<Peer>();
  /** Not committed yet, with who needs not be told because it sent them. */
  let fresh: { update: Uint8Array; from: Peer | null }[] = [];
  let afterCommit: (() => void)[] = [];
  let isAsked = false;
  let inFlight = 0;
  let isSound = true;

  const close = (code: number, reason: string): void => {
    isSound = false;
    for (const peer of [...peers]) peer.close(code, reason);
  };

  /** Commit before broadcast: nobody sees, and nobody is told "saved", what a crash could take back. */
  const askCommit = (): void => {
    if (isAsked || !isSound) return;
    isAsked = true;
    // Taken up when the group is formed, so that one turn of the loop is one group.
    queueMicrotask(() => {
      isAsked = false;
      if (!isSound) return;
      const group = fresh;
      const after = afterCommit;
      fresh = [];
      afterCommit = [];
      inFlight++;
      committer.add({
        entries: group.map(({ update }) => ({ classroom: id, update })),
        done: () => {
          inFlight--;
          logged += group.length;
          if (!isSound) return;
          for (const { update, from } of group) {
            const message = bytes.update(update);
            for (const peer of peers) if (peer !== from) peer.send(message);
          }
          for (const then of after) then();
          onCommitted(room);
        },
        failed: () => {
          inFlight--;
          close(closes.cannotSave, 'could not save');
        },
      });
    });
  };
  const whenCommitted = (then: () => void): void => {
    if (fresh.length === 0 && inFlight === 0) then();
    else {
      afterCommit.push(then);
      askCommit();
    }
  };

  /** What the document has now is committed later; so it is looked at now and said then. */
  const echo = (peer: Peer): void => {
    settleNeeds(peer.needs, doc);
    if (peer.needs.size > 0) return;
    const numbers = peer.marks.splice(0);
    whenCommitted(() => {
      for (const number of numbers) peer.send(bytes.mark(number));
    });
  };

  let hadPending = false;
  doc.on('update', (update: Uint8Array, from: unknown) => {
    // With something that waited in it, the sender may lack a part too.
    fresh.push({ update, from: hadPending ? null : ((from as Peer | null) ?? null) });
    askCommit();
  });

  awareness.on('update', ({ added, updated, removed }: Record<'added' | 'updated' | 'removed', number[]>, from: unknown) => {
    const changed = [...added, ...updated, ...removed];
    const peer = [...peers].find((one) => one === from);
    if (peer) for (const client of [...added, ...updated]) peer.clients.add(client);
    const message = bytes.presence(awareness, changed);
    // The sender too: hearing itself is how a page knows that the line still holds.
    for (const one of peers) one.send(message, 'presence');
  });

  const room: Room = {
    isSound: () => isSound,
    size: () => peers.size,
    logged: () => logged,
    tidied: (count) => {
      logged = Math.max(0, logged - count);
    },
    join: (peer) => {
      peers.add(peer);
      peer.send(bytes.role(peer.mayChange));
      peer.send(bytes.question(doc));
      const here = [...awareness.getStates().keys()];
      if (here.length > 0) peer.send(bytes.presence(awareness, here));
    },
    leave: (peer) => {
      peers.delete(peer);
      awarenessProtocol.removeAwarenessStates(awareness, [...peer.clients], null);
    },
    take: (peer, update) => {
      if (!isSound || !peer.mayChange) return;
      const needs = needsOf(update);
      hadPending = doc.store.pendingStructs !== null || doc.store.pendingDs !== null;
      Y.applyUpdate(doc, update, peer);
      settleNeeds(needs, doc);
      addNeeds(peer.needs, needs);
      if (!hadPending) return;
      // It may have been what others waited for.
      for (const one of peers) if (one.marks.length > 0) echo(one);
    },
    answer: (peer, vector) => {
      const message = bytes.answer(doc, vector);
      whenCommitted(() => peer.send(message));
    },
    mark: (peer, number) => {
      if (!peer.mayChange || !isSound) return;
      peer.marks.push(number);
      echo(peer);
    },
    remark: (peer, json) => {
      // Who may change writes into the document.
      if (peer.mayChange || !isSound) return;
      const wish = readRemarkWish(json);
      if (!wish) throw new Error('not a remark');
      const notes = rootOf(doc, 'notes');
      // Sent again because the page had not heard of it yet; or the list is full, and the page keeps it.
      if (notes.has(wish.id) || notes.size >= limits.list) return;
      const classroom = openDocument(doc);
      classroom.commands.addRemark({ ...wish, by: visitorName(wish.by) });
      classroom.destroy();
    },
    presence: (peer, update) => {
      if (peer.clients.size > MOST_CLIENTS) throw new Error('too many presences');
      awarenessProtocol.applyAwarenessUpdate(awareness, update, peer);
    },
    allPresence: (peer) => peer.send(bytes.presence(awareness, [...awareness.getStates().keys()])),
    close,
    destroy: () => {
      isSound = false;
      awareness.destroy();
      doc.destroy();
    },
  };
  return room;
}

import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { importOrigin } from '#model/document/origins.ts';
import { watchOverwritten } from '#model/document/overwritten.ts';
import { readPresence } from '#model/document/presence.ts';
import { isBlank } from '#model/document/roots.ts';
import type { Classroom } from '#model/schema/types.ts';
import { type DeviceStore, openDeviceStore } from '../store/deviceStore.ts';
import type { Keeping } from '../store/keepDocument.ts';
import { type Connection, type ConnectOptions, connect } from '../sync/connection.ts';
import { ownClientsOf } from '../sync/ownClients.ts';
import { serverOf } from '../sync/server.ts';
import { unconfirmedOf } from '../sync/unconfirmed.ts';
import { isForLooking } from './address.ts';
import type { OpenOptions } from './analyst.ts';
import { composeSession } from './composeSession.ts';
import { keepConflicts } from './conflicts.ts';
import { guarded } from './lookOnly.ts';
import { personOf } from './presenceOf.ts';
import type { Session } from './types.ts';

/** What a page has by itself; tests bring their own. */
export interface OpenSeams {
  readonly store?: DeviceStore;
  readonly server?: string | null;
  readonly WebSocket?: ConnectOptions['WebSocket'];
  readonly storage?: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null;
  /** ms to wait for a classroom that this device does not have */
  readonly patience?: number;
  /** Whether the page was opened by an address for looking. */
  readonly isForLooking?: boolean;
}

let pageStore: DeviceStore | null = null;
/** One connection to the device's database for the page. */
function storeOfPage(): DeviceStore {
  pageStore ??= openDeviceStore();
  return pageStore;
}

/**
 * Opens one classroom: what this device has, at once; what the server has, as it comes.
 * @throws Error in words for people when the classroom is neither here, nor begun, nor on the server.
 */
export async function openSession(id: string, options: OpenOptions, seams: OpenSeams = {}): Promise<Session> {
  const doc = new Y.Doc();
  const document = openDocument(doc);
  const store = seams.store ?? storeOfPage();
  const keeping = store.keep(id, doc);
  const hadIt = await keeping.loaded;
  if (!hadIt && options.start) Y.applyUpdate(doc, startUpdate(options.start), importOrigin);

  const storage = seams.storage === undefined ? pageStorage() : seams.storage;
  const unconfirmed = unconfirmedOf(id, storage);
  const conflicts = keepConflicts(id, doc, storage);
  const isMine = ownClientsOf(id, doc.clientID, storage);
  // Before anything can come: the first merge is the one that overwrites most.
  const isConfirmed = (client: number, clock: number): boolean => connection.isConfirmed(client, clock);
  watchOverwritten(doc, { isMine, isConfirmed }, (found) => conflicts.add(found, initialsOf));
  doc.on('afterTransaction', ({ local }: Y.Transaction) => !local && conflicts.follow(isMine, initialsOf));
  // Who went out of reach is still known by the initials they had.
  const met = new Map<number, string>();
  const initialsOf = (client: number): string => met.get(client) ?? '';
  const connection: Connection = connect(id, doc, {
    server: seams.server === undefined ? serverOf(location) : seams.server,
    waitingBefore: unconfirmed.read(),
    ...(seams.WebSocket && { WebSocket: seams.WebSocket }),
  });
  const { awareness } = connection;
  awareness.on('change', () => {
    for (const person of readPresence(awareness.getStates(), awareness.clientID)) met.set(person.clientId, personOf(person).initials);
    conflicts.name(initialsOf);
  });
  // Nothing to draw yet: only then does opening wait for the network.
  if (isBlank(doc)) {
    const trouble = await arrival(doc, connection, keeping, seams.patience ?? 10_000);
    if (trouble !== null) {
      connection.close();
      await keeping.close();
      document.destroy();
      doc.destroy();
      throw new Error(trouble);
    }
  }
  void keeping.settled().then(() => keeping.state().here === 'kept' && store.askToStay().catch(() => false));
  const session = composeSession({ id, document, keeping, connection, unconfirmed, options });
  const isLook = seams.isForLooking ?? (typeof location !== 'undefined' && isForLooking(location.hash));
  return guarded(session, { connection, storage, isForLooking: isLook });
}

const starts = new WeakMap<Classroom, Uint8Array>();
/** One and the same update for one start, so that a page that opens it twice at once does not begin it twice. */
function startUpdate(start: Classroom): Uint8Array {
  const known = starts.get(start);
  if (known) return known;
  const begun = createDocument(start);
  const update = Y.encodeStateAsUpdate(begun.doc);
  begun.destroy();
  begun.doc.destroy();
  starts.set(start, update);
  return update;
}

/** Waits until the classroom has come. @returns why it did not, in words. */
function arrival(doc: Y.Doc, connection: Connection, keeping: Keeping, patience: number): Promise<string | null> {
  return new Promise((resolve) => {
    const stops: (() => void)[] = [];
    const done = (trouble: string | null): void => {
      for (const stop of stops) stop();
      resolve(trouble);
    };
    const look = (): void => {
      const { server, trouble } = connection.state();
      if (!isBlank(doc)) done(null);
      else if (server === 'refused') done(trouble ?? 'The server did not let this page in.');
      else if (server === 'alone') done(notHere(keeping, 'and this page came from no server that may have it'));
      else if (connection.hasMet())
        done('There is no classroom under this address. Look whether the address is whole, or begin a new classroom.');
    };
    const timer = setTimeout(() => done(notHere(keeping, 'and the server that may have it does not answer')), patience);
    stops.push(() => clearTimeout(timer), connection.subscribe(look));
    doc.on('update', look);
    stops.push(() => doc.off('update', look));
    look();
  });
}

function notHere(keeping: Keeping, rest: string): string {
  const { here, trouble } = keeping.state();
  if (here === 'failed' && trouble) return `${trouble} What this device has of the classroom could not be read, ${rest}.`;
  return `This classroom is not on this device, ${rest}. Go where the network reaches and open the address again.`;
}

function pageStorage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

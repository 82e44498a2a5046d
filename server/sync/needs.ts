import * as Y from 'yjs';

/** How far a document must have come, per writing client, for an update to be wholly in it. */
export type Needs = Map<number, number>;

/**
 * What an update needs: the ends of what it inserts and of what it deletes.
 * @throws when the bytes are no update; so it is also the check before they touch a document.
 */
export function needsOf(update: Uint8Array): Needs {
  const { structs, ds } = Y.decodeUpdate(update);
  const needs: Needs = new Map();
  const need = (client: number, end: number): void => {
    if (end > (needs.get(client) ?? 0)) needs.set(client, end);
  };
  for (const { id, length } of structs) need(id.client, id.clock + length);
  for (const [client, ranges] of ds.clients) for (const { clock, len } of ranges) need(client, clock + len);
  return needs;
}

/** Takes out what the document has meanwhile; what stays is still waited for. */
export function settleNeeds(needs: Needs, doc: Y.Doc): void {
  for (const [client, end] of needs) if (Y.getState(doc.store, client) >= end) needs.delete(client);
}

export function addNeeds(needs: Needs, more: Needs): void {
  for (const [client, end] of more) if (end > (needs.get(client) ?? 0)) needs.set(client, end);
}

import * as Y from 'yjs';
import type { Storage } from '../storage/storage.ts';

/**
 * Puts a classroom's log into one state. Through a loaded document, which forgets overwritten values; merging
 * the log alone keeps them all. Reads only what is committed; what is added meanwhile stays in the log.
 * @returns how many updates the log has less.
 */
export async function compact(id: string, storage: Storage): Promise<number> {
  const { snapshot, updates, last } = await storage.load(id);
  if (updates.length === 0) return 0;
  const doc = new Y.Doc();
  if (snapshot) Y.applyUpdate(doc, snapshot);
  for (const update of updates) Y.applyUpdate(doc, update);
  await storage.replace(id, Y.encodeStateAsUpdate(doc), last);
  doc.destroy();
  return updates.length;
}

import * as Y from 'yjs';

/** What one tab tells the others on the same device. */
interface TabMessage {
  readonly update: Uint8Array;
  /** False: the sender could not keep it, so whoever gets it should try. */
  readonly isKept: boolean;
}

export interface Tabs {
  tell(update: Uint8Array, isKept: boolean): void;
  close(): void;
}

/** Came from another tab of this browser. */
export const tabOrigin: unique symbol = Symbol('another tab');

/**
 * Joins the tabs that have the same classroom open.
 * @param onUnkept called with an update that the other tab could not keep.
 */
export function joinTabs(name: string, doc: Y.Doc, onUnkept: (update: Uint8Array) => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(name);
  // In Node an open channel would keep a test's process alive.
  (channel as { unref?: () => void }).unref?.();
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (!isTabMessage(data)) return;
    Y.applyUpdate(doc, data.update, tabOrigin);
    if (!data.isKept) onUnkept(data.update);
  };
  return {
    tell: (update, isKept) => channel.postMessage({ update, isKept } satisfies TabMessage),
    close: () => channel.close(),
  };
}

function isTabMessage(data: unknown): data is TabMessage {
  return typeof data === 'object' && data !== null && (data as Partial<TabMessage>).update instanceof Uint8Array;
}

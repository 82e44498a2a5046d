import { newId } from '#model/document/ids.ts';
import { readRemarkWish } from '#model/document/remarkWish.ts';
import type { Commands } from '#model/document/types.ts';
import type { Connection } from '../sync/connection.ts';
import { conflictsOf } from './conflicts.ts';
import type { Kept, Session } from './types.ts';
import { waitingRemarksOf } from './waitingRemarks.ts';

/** Said when something would change a classroom that this page may only look at. */
export const LOOKING = 'You may look and remark here, not change. Who may change it can give you the other address, under Share.';
const NO_REMARK = 'This cannot be a remark: write up to 500 letters.';

const roles = new WeakMap<Session, () => boolean>();

/** Whether this page may change the classroom. */
export const mayChange = (session: Session): boolean => roles.get(session)?.() ?? true;

export interface LookParts {
  readonly connection: Connection;
  /** The page was opened by an address for looking. */
  readonly isForLooking: boolean;
  readonly storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null;
}

/**
 * The one place that guards a classroom which this page may only look at: every command is refused, in words, but a
 * remark, which is handed to the server to put in. What the server said at an earlier visit holds until it says otherwise,
 * so that a page that opens without it does not offer what would be refused later.
 */
export function guarded(session: Session, { connection, isForLooking, storage }: LookParts): Session {
  const key = `lowshelf.look.${session.id}`;
  const waiting = waitingRemarksOf(session.id, storage);
  const listeners = new Set<() => void>();
  /** Handed to the server on this connection. */
  const sent = new Set<string>();
  let lookedBefore = remembered();
  let isRefusing = false;
  let lastKept: { readonly of: Kept; readonly count: number; readonly value: Kept } | null = null;

  function remembered(): boolean {
    try {
      return storage?.getItem(key) === '1';
    } catch {
      return false;
    }
  }
  function remember(isLook: boolean): void {
    if (isLook === lookedBefore) return;
    lookedBefore = isLook;
    try {
      if (isLook) storage?.setItem(key, '1');
      else storage?.removeItem(key);
    } catch {
      // The server says it again.
    }
  }
  const may = (): boolean => !isForLooking && (connection.mayChange() ?? !lookedBefore);
  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };

  // What follows from a refused command is not said: the reason comes last and alone.
  function refuse(): void {
    if (isRefusing) return;
    isRefusing = true;
    setTimeout(() => {
      isRefusing = false;
      session.announce(LOOKING);
    });
  }

  const addRemark: Commands['addRemark'] = (remark) => {
    // By choice at the address for looking, though the server lets it change: it writes by itself.
    if (connection.mayChange() === true) return session.commands.addRemark(remark);
    const { on = null, x = 0, y = 0, text, by = '' } = remark;
    const wish = readRemarkWish(JSON.stringify({ id: newId('n'), on, x, y, text, by }));
    if (!wish) {
      session.announce(NO_REMARK);
      return '';
    }
    waiting.add(wish);
    if (!sent.has(wish.id))
      setTimeout(() => session.announce('The remark is kept on this device and goes to the sheet when the server is in reach.'));
    return wish.id;
  };
  // Each under its own name, so it is all of the commands again.
  const commands = Object.fromEntries(
    (Object.entries(session.commands) as [keyof Commands, (...given: unknown[]) => unknown][]).map(([name, run]) => [
      name,
      (...given: unknown[]): unknown => {
        if (may()) return run(...given);
        if (name === 'addRemark') return addRemark(given[0] as Parameters<Commands['addRemark']>[0]);
        refuse();
        return name.startsWith('add') ? '' : false;
      },
    ]),
  ) as unknown as Commands;

  function send(): void {
    if (connection.state().server === 'offline') sent.clear();
    for (const wish of waiting.list()) if (!sent.has(wish.id) && connection.sendRemark(JSON.stringify(wish))) sent.add(wish.id);
  }
  function heed(): void {
    const said = connection.mayChange();
    if (said !== null) remember(!said);
    send();
  }
  // It may have spoken while the classroom was still coming.
  heed();
  const stops = [
    conflictsOf(session).subscribe(tell),
    waiting.close,
    waiting.subscribe(() => {
      send();
      tell();
    }),
    connection.subscribe(() => {
      heed();
      tell();
    }),
    session.document.onChange(() => {
      if (waiting.list().length > 0) waiting.arrived(new Set(session.classroom().notes.map(({ id }) => id)));
    }),
  ];

  const made: Session = {
    ...session,
    document: { ...session.document, commands },
    commands,
    undo: {
      ...session.undo,
      canTakeBack: () => may() && session.undo.canTakeBack(),
      canDoAgain: () => may() && session.undo.canDoAgain(),
      takeBack: () => (may() ? session.undo.takeBack() : refuse()),
      doAgain: () => (may() ? session.undo.doAgain() : refuse()),
    },
    kept: () => {
      const of = session.kept();
      const count = waiting.list().length;
      if (count === 0) return of;
      if (lastKept?.of !== of || lastKept.count !== count) {
        const server = of.server === 'saved' ? 'saving' : of.server;
        lastKept = { of, count, value: { ...of, server, waiting: of.waiting + count } };
      }
      return lastKept.value;
    },
    // A thing that may not be moved is not shown elsewhere either.
    setView: (change) => session.setView(may() ? change : { ...change, preview: null, draft: null }),
    announce: (text, isOnPage) => {
      if (!isRefusing) session.announce(text, isOnPage);
    },
    subscribe: (listener) => {
      const stop = session.subscribe(listener);
      listeners.add(listener);
      return () => {
        stop();
        listeners.delete(listener);
      };
    },
    close: () => {
      for (const stop of stops) stop();
      listeners.clear();
      return session.close();
    },
  };
  roles.set(made, may);
  return made;
}

import { edgeOf, type Presence, readPresence } from '#model/document/presence.ts';
import type { ClassroomDocument } from '#model/document/types.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Keeping } from '../store/keepDocument.ts';
import type { Connection } from '../sync/connection.ts';
import type { Unconfirmed } from '../sync/unconfirmed.ts';
import type { OpenOptions } from './analyst.ts';
import { heldIn, personOf } from './presenceOf.ts';
import { shownReports } from './shownReport.ts';
import type { Kept, Person, Preview, Session, View } from './types.ts';
import { arrangementShown, changedView, coherentView, firstView } from './view.ts';

export interface SessionParts {
  readonly id: string;
  readonly document: ClassroomDocument;
  readonly keeping: Keeping;
  readonly connection: Connection;
  readonly unconfirmed: Unconfirmed;
  readonly options: OpenOptions;
}

/** ms between two frames of a drag that colleagues see */
const SHARED_FRAME = 50;

/** Puts document, store, connection, view and checks together into what the sheets read. */
export function composeSession(parts: SessionParts): Session {
  const { document, keeping, connection, unconfirmed, options } = parts;
  const { awareness } = connection;
  const me = awareness.clientID;
  const listeners = new Set<() => void>();
  let person = options.person;
  let view: View = firstView(document.read());
  let kept: Kept = keptNow();
  let people: readonly Person[] = [];
  let scene: { classroom: Classroom; arrangement: string; preview: Preview | null; value: Scene } | null = null;
  let asked: { classroom: Classroom; arrangement: string; preview: Preview | null } | null = null;
  const shownReport = shownReports();
  let publishing: ReturnType<typeof setTimeout> | null = null;

  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };

  function keptNow(): Kept {
    const { here, trouble } = keeping.state();
    const shared = connection.state();
    return { here, server: shared.server, waiting: shared.waiting, trouble: (here === 'failed' ? trouble : shared.trouble) ?? trouble };
  }
  const refreshKept = (): void => {
    const next = keptNow();
    unconfirmed.note(next.waiting);
    if (next.here === kept.here && next.server === kept.server && next.waiting === kept.waiting && next.trouble === kept.trouble) return;
    kept = next;
    tell();
  };

  const refreshPeople = (): void => {
    const next = readPresence(awareness.getStates(), me).map((found, index) => {
      const now = personOf(found);
      const before = people[index];
      return before && JSON.stringify(before) === JSON.stringify(now) ? before : now;
    });
    if (next.length === people.length && next.every((entry, index) => entry === people[index])) return;
    people = next;
    tell();
  };
  const publish = (): void => {
    if (publishing !== null) clearTimeout(publishing);
    publishing = null;
    const state: Presence = {
      name: person.name.slice(0, 80),
      initials: person.initials.slice(0, 3),
      edge: edgeOf(me),
      sheet: view.sheet,
      holds: heldIn(view),
      preview: view.preview,
    };
    awareness.setLocalState(state);
  };
  /** The frames of a drag go out at most 20 times a second. */
  const publishSoon = (): void => {
    publishing ??= setTimeout(publish, SHARED_FRAME);
  };

  const ask = (): void => {
    const classroom = document.read();
    if (asked && asked.classroom === classroom && asked.arrangement === view.arrangement && asked.preview === view.preview) return;
    asked = { classroom, arrangement: view.arrangement, preview: view.preview };
    options.analyst.ask(classroom, view.arrangement, view.preview);
  };

  const stops = [
    document.onChange(() => {
      const held = heldIn(view);
      view = coherentView(document.read(), view);
      if (heldIn(view) !== held) publishSoon();
      ask();
      tell();
    }),
    keeping.subscribe(refreshKept),
    connection.subscribe(refreshKept),
    options.analyst.subscribe(tell),
  ];
  awareness.on('change', refreshPeople);
  publish();
  refreshPeople();
  refreshKept();
  ask();

  return {
    id: parts.id,
    document,
    commands: document.commands,
    undo: document.undo,
    classroom: document.read,
    arrangement: () => arrangementShown(document.read(), view),
    scene: () => {
      const classroom = document.read();
      if (scene?.classroom === classroom && scene.arrangement === view.arrangement && scene.preview === view.preview) return scene.value;
      const value = buildScene(withPreview(classroom, view), view.arrangement);
      scene = { classroom, arrangement: view.arrangement, preview: view.preview, value };
      return value;
    },
    report: () => shownReport(options.analyst.report(), view.arrangement, document.read().left),
    view: () => view,
    kept: () => kept,
    people: () => people,
    needsRepair: document.needsRepair,
    setView: (change) => {
      const next = changedView(document.read(), view, change);
      if (next === view) return;
      const isSeen = next.sheet !== view.sheet || next.preview !== view.preview || heldIn(next) !== heldIn(view);
      view = next;
      if (isSeen) publishSoon();
      ask();
      tell();
    },
    setPerson: (now) => {
      person = now;
      publish();
    },
    announce: options.announce,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: async () => {
      for (const stop of stops) stop();
      if (publishing !== null) clearTimeout(publishing);
      listeners.clear();
      await keeping.close();
      connection.close();
      document.destroy();
      document.doc.destroy();
    },
  };
}

function withPreview(classroom: Classroom, { arrangement, preview }: View): Classroom {
  if (!preview) return classroom;
  const { piece, x, y, rotation } = preview;
  return applyEdits(classroom, arrangement, [{ do: 'move-piece', piece, x, y, rotation }]);
}

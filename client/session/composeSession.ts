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
import type { Draft, Kept, Person, Preview, Session, View } from './types.ts';
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

/** What the checks and the scene were last made of. */
interface Asked {
  readonly classroom: Classroom;
  readonly arrangement: string;
  readonly preview: Preview | null;
  readonly draft: Draft | null;
}

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
  let scene: (Asked & { value: Scene }) | null = null;
  let asked: Asked | null = null;
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
      const now = personOf(found, view.arrangement);
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
      arrangement: view.arrangement,
      holds: heldIn(view),
      preview: view.preview,
    };
    awareness.setLocalState(state);
  };
  /** The frames of a drag go out at most 20 times a second. */
  const publishSoon = (): void => {
    publishing ??= setTimeout(publish, SHARED_FRAME);
  };

  const askedNow = (): Asked => {
    const { arrangement, preview, draft } = view;
    return { classroom: document.read(), arrangement, preview, draft };
  };
  const ask = (): void => {
    const now = askedNow();
    if (asked && isSameAsked(asked, now)) return;
    asked = now;
    options.analyst.ask(withDraft(now.classroom, view), view.arrangement, view.preview);
  };

  const stops = [
    document.onChange(() => {
      const { arrangement } = view;
      const held = heldIn(view);
      view = coherentView(document.read(), view);
      if (heldIn(view) !== held || view.arrangement !== arrangement) publishSoon();
      if (view.arrangement !== arrangement) refreshPeople();
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
      const now = askedNow();
      if (scene && isSameAsked(scene, now)) return scene.value;
      const value = buildScene(withPreview(withDraft(now.classroom, view), view), view.arrangement);
      scene = { ...now, value };
      return value;
    },
    report: () => shownReport(options.analyst.report(), view.arrangement, document.read().left),
    isThinking: options.analyst.isThinking,
    view: () => view,
    kept: () => kept,
    people: () => people,
    needsRepair: document.needsRepair,
    setView: (change) => {
      const next = changedView(document.read(), view, change);
      if (next === view) return;
      const isElsewhere = next.arrangement !== view.arrangement;
      const isSeen = isElsewhere || next.sheet !== view.sheet || next.preview !== view.preview || heldIn(next) !== heldIn(view);
      view = next;
      if (isSeen) publishSoon();
      if (isElsewhere) refreshPeople();
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

function isSameAsked(p: Asked, q: Asked): boolean {
  return p.classroom === q.classroom && p.arrangement === q.arrangement && p.preview === q.preview && p.draft === q.draft;
}

/** The classroom as it would be with the room or the things that are in hand. */
function withDraft(classroom: Classroom, { arrangement, draft }: Pick<View, 'arrangement' | 'draft'>): Classroom {
  if (!draft) return classroom;
  const moved = new Map(draft.pieces?.map((piece) => [piece.id, piece]));
  const arrangements =
    moved.size === 0
      ? classroom.arrangements
      : classroom.arrangements.map((shown) =>
          shown.id === arrangement ? { ...shown, pieces: shown.pieces.map((piece) => moved.get(piece.id) ?? piece) } : shown,
        );
  return { ...classroom, room: draft.room ?? classroom.room, arrangements };
}

function withPreview(classroom: Classroom, { arrangement, preview }: View): Classroom {
  if (!preview) return classroom;
  const { piece, x, y, rotation } = preview;
  return applyEdits(classroom, arrangement, [{ do: 'move-piece', piece, x, y, rotation }]);
}

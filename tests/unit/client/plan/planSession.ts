import type { Person, Session, View } from '#client/session/types.ts';
import { changedView } from '#client/session/view.ts';
import type { Report } from '#model/analysis/report.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { buildScene, pickArrangement } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

export interface PlanSession extends Session {
  /** What was announced, in order. */
  readonly said: string[];
  readonly previews: View['preview'][];
  setReport(report: Report | null): void;
  /** The checks are looking, or have looked: whoever listens is told. */
  setThinking(isThinking: boolean): void;
  setPeople(people: readonly Person[]): void;
}

/** A session over a real document in memory, without store, connection or checks. */
export function planSession(change: PlainRoomChange = {}): PlanSession {
  const document = createDocument(plainRoom(change));
  const said: string[] = [];
  const previews: View['preview'][] = [];
  let report: Report | null = null;
  let isThinking = false;
  const listeners = new Set<() => void>();
  let people: readonly Person[] = [];
  let view: View = {
    sheet: 'room',
    arrangement: 'a1',
    chosen: null,
    alsoChosen: [],
    frontOf: null,
    material: null,
    finding: null,
    compared: null,
    laid: null,
    preview: null,
    draft: null,
  };
  const arrangement = () => {
    const shown = pickArrangement(document.read(), view.arrangement);
    if (!shown) throw new Error('a classroom has an arrangement');
    return shown;
  };
  return {
    id: 'room',
    said,
    previews,
    document,
    commands: document.commands,
    undo: document.undo,
    classroom: document.read,
    arrangement,
    scene: () => buildScene(document.read(), view.arrangement),
    report: () => report,
    isThinking: () => isThinking,
    view: () => view,
    kept: () => ({ here: 'kept', server: 'alone', waiting: 0, trouble: null }),
    people: () => people,
    needsRepair: document.needsRepair,
    setView: (set) => {
      if (set.preview) previews.push(set.preview);
      view = changedView(document.read(), view, set);
    },
    setPerson: () => {},
    announce: (text) => said.push(text),
    subscribe: (listener) => {
      const stop = document.onChange(listener);
      listeners.add(listener);
      return () => {
        stop();
        listeners.delete(listener);
      };
    },
    close: async () => {},
    setReport: (next) => {
      report = next;
    },
    setThinking: (next) => {
      isThinking = next;
      for (const listener of [...listeners]) listener();
    },
    setPeople: (next) => {
      people = next;
    },
  };
}

import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { sharedOrigin } from '#model/document/origins.ts';
import type { ClassroomDocument } from '#model/document/types.ts';
import type { Classroom } from '#model/schema/types.ts';

/** Several people on one classroom, with a network that holds back, reorders and repeats what a script says. */
export interface ScriptedNetwork {
  readonly people: readonly ClassroomDocument[];
  /** Hands over one waiting update, wherever it stands in the queue; `twice` hands it over again later. */
  deliver(from: number, to: number, pick: number, twice: boolean): void;
  /** Everybody gets everything. */
  settle(): void;
}

export function scriptedNetwork(classroom: Classroom, count: number): ScriptedNetwork {
  const first = createDocument(classroom);
  const start = Y.encodeStateAsUpdate(first.doc);
  const people = [first];
  while (people.length < count) {
    const doc = new Y.Doc();
    Y.applyUpdate(doc, start, sharedOrigin);
    people.push(openDocument(doc));
  }
  const queues = new Map<string, Uint8Array[]>();
  const queue = (from: number, to: number): Uint8Array[] => {
    const key = `${from}>${to}`;
    const there = queues.get(key) ?? [];
    queues.set(key, there);
    return there;
  };
  people.forEach((person, from) => {
    person.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === sharedOrigin) return;
      people.forEach((_, to) => {
        if (to !== from) queue(from, to).push(update);
      });
    });
  });
  const apply = (to: number, update: Uint8Array): void => {
    const person = people[to];
    if (person) Y.applyUpdate(person.doc, update, sharedOrigin);
  };
  return {
    people,
    deliver(from, to, pick, twice) {
      const waiting = queue(from, to);
      const [update] = waiting.splice(pick % Math.max(1, waiting.length), 1);
      if (!update) return;
      apply(to, update);
      if (twice) waiting.push(update);
    },
    settle() {
      for (const [key, waiting] of queues) {
        const to = Number(key.split('>')[1]);
        for (const update of waiting.splice(0)) apply(to, update);
      }
    },
  };
}

import * as Y from 'yjs';
import type { Classroom } from '../schema/types.ts';
import { createCommands } from './commands/commands.ts';
import { newId } from './ids.ts';
import { keptOrigin } from './origins.ts';
import { createReader } from './readDocument.ts';
import { createRepairer } from './repair.ts';
import { isBlank } from './roots.ts';
import type { Change, ClassroomDocument, NeedsRepair } from './types.ts';
import { createUndo } from './undo.ts';
import { writeInto } from './writeInto.ts';

export interface DocumentOptions {
  /** Makes ids; for tests that need the same ones each time. */
  readonly newId?: (kind: string) => string;
  /** ISO time written beside what was left as it is. */
  readonly now?: () => string;
}

/** A document that holds this classroom. @throws UnfitValue when it has a reserved key. */
export function createDocument(classroom: Classroom, options: DocumentOptions = {}): ClassroomDocument {
  const doc = new Y.Doc();
  writeInto(doc, classroom);
  return openDocument(doc, options);
}

/**
 * Opens a classroom that lies in a Y.Doc. A doc that nothing has come into yet reads as an empty room
 * and needs no repair. `destroy` stops listening; it leaves the given doc as it is.
 */
export function openDocument(doc: Y.Doc = new Y.Doc(), options: DocumentOptions = {}): ClassroomDocument {
  const reader = createReader(doc);
  const repairer = createRepairer();
  const own = Symbol('own command');
  const { undo, manager } = createUndo(doc, own);
  const listeners = new Set<(change: Change) => void>();
  let reading: { classroom: Classroom; problems: readonly NeedsRepair[] } | null = null;
  let problems: readonly NeedsRepair[] = Object.freeze([]);

  const current = () => {
    if (reading) return reading;
    const raw = reader.read();
    const repaired = repairer.repair(raw.value);
    const now = isBlank(doc) ? [] : [...raw.problems, ...repaired.problems];
    if (now.length > 0 || problems.length > 0) problems = Object.freeze(now);
    reading = { classroom: repaired.classroom, problems };
    return reading;
  };

  const originOf = (transaction: Y.Transaction): Change['from'] => {
    if (transaction.origin === own) return 'own';
    if (transaction.origin === manager) return 'undo';
    return transaction.origin === keptOrigin ? 'kept' : 'others';
  };

  const afterTransaction = (transaction: Y.Transaction): void => {
    if (transaction.changed.size === 0) return;
    reader.forget(transaction.changedParentTypes.keys());
    reading = null;
    const change: Change = { from: originOf(transaction) };
    for (const listener of [...listeners]) listener(change);
  };
  doc.on('afterTransaction', afterTransaction);

  return {
    doc,
    read: () => current().classroom,
    needsRepair: () => current().problems,
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    commands: createCommands({
      doc,
      read: () => current().classroom,
      newId: options.newId ?? newId,
      now: options.now ?? (() => new Date().toISOString()),
      step: (work) => doc.transact(work, own),
    }),
    undo,
    destroy: () => {
      doc.off('afterTransaction', afterTransaction);
      manager.destroy();
      listeners.clear();
    },
  };
}

import * as Y from 'yjs';
import { allRoots } from './roots.ts';
import type { PersonalUndo } from './types.ts';

/** Taking back a person's own steps. What others changed meanwhile is left alone. */
export function createUndo(doc: Y.Doc, ownOrigin: unknown): { undo: PersonalUndo; manager: Y.UndoManager } {
  // Each command is a step of its own, however fast they come; only a drag gathers.
  const manager = new Y.UndoManager(allRoots(doc), { trackedOrigins: new Set([ownOrigin]), captureTimeout: 0, doc });
  const endStep = (): void => {
    manager.captureTimeout = 0;
    manager.stopCapturing();
  };
  const undo: PersonalUndo = {
    canTakeBack: () => manager.canUndo(),
    canDoAgain: () => manager.canRedo(),
    takeBack: () => {
      endStep();
      manager.undo();
    },
    doAgain: () => {
      endStep();
      manager.redo();
    },
    beginStep: () => {
      manager.stopCapturing();
      manager.captureTimeout = Number.POSITIVE_INFINITY;
    },
    endStep,
  };
  return { undo, manager };
}

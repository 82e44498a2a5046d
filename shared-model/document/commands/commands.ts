import type { Commands } from '../types.ts';
import { arrangementCommands } from './arrangements.ts';
import { classCommands } from './classes.ts';
import type { Context } from './context.ts';
import { applyEdits } from './edits.ts';
import { materialCommands } from './materials.ts';
import { pieceCommands } from './pieces.ts';
import { placementCommands } from './placements.ts';
import { remarkCommands } from './remarks.ts';
import { roomCommands } from './room.ts';
import { versionCommands } from './versions.ts';

/** Everything a person can do to a classroom. */
export function createCommands(context: Context): Commands {
  const named = {
    ...pieceCommands(context),
    ...placementCommands(context),
    ...materialCommands(context),
    ...roomCommands(context),
    ...classCommands(context),
    ...arrangementCommands(context),
    ...remarkCommands(context),
    ...versionCommands(context),
  };
  return { ...named, applyEdits: (arrangement, edits) => applyEdits(context, named, arrangement, edits) };
}

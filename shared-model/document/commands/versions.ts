import { thingAt } from '../overwritten.ts';
import { cornersOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { writeVersions } from '../version.ts';
import type { Context } from './context.ts';

/** Writing by path: for what was overwritten in a merge, and for entries that do not parse. */
export function versionCommands(context: Context): Pick<Commands, 'setBack' | 'takeOut'> {
  const { doc, step } = context;
  return {
    setBack(path, fields) {
      const target = thingAt(doc, path);
      if (!target) return false;
      step(() => writeVersions(target, fields));
      return true;
    },
    takeOut(path, key) {
      if (path.length === 1 && path[0] === 'corners') {
        // By its place alone: a corner's id may be a number too.
        const index = Number(/^\[(\d+)\]$/.exec(key)?.[1] ?? Number.NaN);
        if (!Number.isInteger(index) || index < 0 || index >= cornersOf(doc).length) return false;
        step(() => cornersOf(doc).delete(index));
        return true;
      }
      const target = thingAt(doc, path);
      if (!target?.has(key)) return false;
      step(() => target.delete(key));
      return true;
    },
  };
}

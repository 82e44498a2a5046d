import { arrangement as arrangementSchema } from '../../schema/arrangement.ts';
import { plainOf } from '../decode.ts';
import { writeEntry, writeField } from '../encode.ts';
import { layout, settingsShape, shapeOf } from '../layout.ts';
import { isPlainObject, type Plain } from '../plain.ts';
import { rootOf, settingsOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { arrangementOf, type Context, part, removeFrom } from './context.ts';
import { Gone } from './gone.ts';
import { keepNumbers } from './keepNumbers.ts';

type ArrangementCommands = Pick<Commands, 'addArrangement' | 'renameArrangement' | 'removeArrangement' | 'setCurrent'>;

export function arrangementCommands(context: Context): ArrangementCommands {
  const list = () => rootOf(context.doc, 'arrangements');
  return {
    addArrangement(name, copyOf) {
      const { name: checked } = part(arrangementSchema, { name }, 'arrangement');
      // Pieces keep their ids in the copy: laid one over the other, the two are compared piece by piece.
      const copied = copyOf === undefined ? {} : copyFrom(context, copyOf);
      const id = context.newId('a');
      context.step(() => writeEntry(list(), layout.arrangements, id, { pieces: [], placements: [], ...copied, id, name: checked }));
      return id;
    },
    renameArrangement(arrangement, name) {
      const target = arrangementOf(context, arrangement);
      if (!target) return false;
      const { name: checked } = part(arrangementSchema, { name }, 'arrangement');
      context.step(() => writeField(target, 'name', { as: 'value' }, checked));
      return true;
    },
    removeArrangement(arrangement) {
      // A classroom has at least one.
      if (list().size <= 1) return false;
      return keepNumbers(
        context,
        (before) => before.filter(({ id }) => id !== arrangement),
        () => removeFrom(context, list(), arrangement),
      );
    },
    setCurrent(arrangement) {
      if (!arrangementOf(context, arrangement)) return false;
      context.step(() => writeField(settingsOf(context.doc), 'current', shapeOf(settingsShape, 'current'), arrangement));
      return true;
    },
  };
}

function copyFrom(context: Context, id: string): Plain {
  const source = arrangementOf(context, id);
  if (!source) throw new Gone('arrangement', id);
  const plain = plainOf(source, layout.arrangements.entry);
  return isPlainObject(plain) ? plain : {};
}

import { classroom as classroomSchema } from '../../schema/classroom.ts';
import { mapAt, writeFields } from '../encode.ts';
import { childrenShape, layout, record, settingsShape, toDocKey } from '../layout.ts';
import { cleanJson, isPlainObject, type Plain } from '../plain.ts';
import { moveDayOf, settingsOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { type Context, part, setFields } from './context.ts';

type ClassCommands = Pick<Commands, 'changeClass' | 'changeMoveDay'>;

export function classCommands(context: Context): ClassCommands {
  return {
    changeClass(set) {
      const { children, ...own } = part(classroomSchema, set, 'classroom');
      context.step(() => {
        setFields(settingsOf(context.doc), settingsShape, own);
        if (children !== undefined) writeFields(mapAt(settingsOf(context.doc), 'children'), childrenShape, children as Plain, 'whole');
      });
      return true;
    },
    changeMoveDay(set) {
      for (const [key, value] of Object.entries(set)) if (value !== undefined) cleanJson(value, `moveDay.${key}`);
      const target = moveDayOf(context.doc);
      context.step(() => {
        for (const [key, value] of Object.entries(set)) {
          if (isPlainObject(value)) writeFields(mapAt(target, toDocKey(key)), record, value, 'part');
          else setFields(target, layout.moveDay, { [key]: value });
        }
      });
      return true;
    },
  };
}

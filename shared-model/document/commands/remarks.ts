import * as Y from 'yjs';
import { left as leftSchema, note as noteSchema } from '../../schema/classroom.ts';
import { idOf } from '../decode.ts';
import { writeEntry } from '../encode.ts';
import { layout } from '../layout.ts';
import { rootOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { type Context, freeId, part, setFields, thing, whole } from './context.ts';

type RemarkCommands = Pick<Commands, 'leave' | 'takeUpAgain' | 'addRemark' | 'changeRemark'>;

export function remarkCommands(context: Context): RemarkCommands {
  const left = () => rootOf(context.doc, 'left');
  const notes = () => rootOf(context.doc, 'notes');
  return {
    leave(key, reason, by, was) {
      const made = whole(leftSchema, { key, reason, by, at: context.now(), ...(was && { was }) }, 'left');
      context.step(() => writeEntry(left(), layout.left, key, made));
      return true;
    },
    takeUpAgain(key) {
      const found = [...left().entries()].filter(([id, entry]) => entry instanceof Y.Map && idOf(id, entry, true) === key);
      if (found.length === 0) return false;
      context.step(() => {
        for (const [id] of found) left().delete(id);
      });
      return true;
    },
    addRemark(remark) {
      const id = freeId(context, notes(), remark.id, 'n');
      const made = whole(noteSchema, { ...remark, id }, 'remark');
      context.step(() => writeEntry(notes(), layout.notes, id, made));
      return id;
    },
    changeRemark(remark, set) {
      const target = thing(notes(), remark);
      if (!target) return false;
      const { id: _, ...checked } = part(noteSchema, set, remark);
      context.step(() => setFields(target, layout.notes.entry, checked));
      return true;
    },
  };
}

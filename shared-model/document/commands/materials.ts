import { material as materialSchema } from '../../schema/material.ts';
import { writeEntry } from '../encode.ts';
import { layout } from '../layout.ts';
import { rootOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { type Context, freeId, part, removeFrom, setFields, thing, whole } from './context.ts';

type MaterialCommands = Pick<Commands, 'addMaterial' | 'changeMaterial' | 'removeMaterial'>;

export function materialCommands(context: Context): MaterialCommands {
  const materials = () => rootOf(context.doc, 'materials');
  return {
    addMaterial(material) {
      const id = freeId(context, materials(), material.id, 'm');
      const made = whole(materialSchema, { ...material, id }, 'material');
      context.step(() => writeEntry(materials(), layout.materials, id, made));
      return id;
    },
    changeMaterial(material, set) {
      const target = thing(materials(), material);
      if (!target) return false;
      const { id: _, ...checked } = part(materialSchema, set, material);
      context.step(() => setFields(target, layout.materials.entry, checked));
      return true;
    },
    removeMaterial(material) {
      if (!thing(materials(), material)) return false;
      return context.step(() => {
        for (const id of rootOf(context.doc, 'arrangements').keys())
          thing(thing(rootOf(context.doc, 'arrangements'), id), 'placements')?.delete(material);
        return removeFrom(context, materials(), material);
      });
    },
  };
}

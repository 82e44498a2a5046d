import { arrangement as arrangementSchema, placement as placementSchema } from '../../schema/arrangement.ts';
import { mapAt, writeEntry, writeField } from '../encode.ts';
import { layout } from '../layout.ts';
import { rootOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { arrangementOf, type Context, removeFrom, setFields, setTogether, thing, whole } from './context.ts';

type PlacementCommands = Pick<Commands, 'place' | 'putAway' | 'setWalk' | 'setWatch'>;

const walkSchema = arrangementSchema.shape.walk.unwrap();
const watchSchema = arrangementSchema.shape.watch.unwrap();

export function placementCommands(context: Context): PlacementCommands {
  return {
    place(arrangement, placement) {
      const holder = arrangementOf(context, arrangement);
      if (!holder || !thing(rootOf(context.doc, 'materials'), placement.material)) return false;
      const { material, piece, side, level, x, y, turned, ...more } = whole(placementSchema, placement, 'placement');
      const on = piece === null ? undefined : thing(thing(holder, 'pieces'), piece);
      if (piece !== null && !on) return false;
      if (level !== null && !thing(on?.get('levels'), level)) return false;
      context.step(() => {
        const list = mapAt(holder, 'placements');
        const target = thing(list, material);
        const place = { piece, side, level, x, y, turned };
        if (target) {
          setTogether(target, place);
          setFields(target, layout.placements.entry, more);
        } else writeEntry(list, layout.placements, material, { material, ...place, ...more });
      });
      return true;
    },
    putAway(arrangement, material) {
      return removeFrom(context, thing(arrangementOf(context, arrangement), 'placements'), material);
    },
    setWalk(arrangement, walk) {
      const holder = arrangementOf(context, arrangement);
      if (!holder) return false;
      const checked = whole(walkSchema, walk, 'walk') as unknown[];
      context.step(() => writeField(holder, 'walk', layout.walk, checked));
      return true;
    },
    setWatch(arrangement, watch) {
      const holder = arrangementOf(context, arrangement);
      if (!holder) return false;
      const checked = whole(watchSchema, watch, 'watch') as unknown[];
      context.step(() => writeField(holder, 'watch', layout.watch, checked));
      return true;
    },
  };
}

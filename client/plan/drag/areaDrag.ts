import type { Point } from '#model/geometry/vec.ts';
import { type Item, isSame, itemsInOrder } from '../items.ts';
import { type PlanModel, rawRoomOf } from '../planModel.ts';
import { chooseSeveral, isInSet, itemsChosen } from '../set/chosenSet.ts';
import type { Drag } from './drag.ts';

/** Draws an area: whatever has its middle in it is chosen, beside what was chosen before. */
export function areaDrag(model: PlanModel, from: Point, isDone: () => void = () => {}): Drag {
  const { session } = model;
  const finish = (): void => {
    model.area = null;
    model.redraw('over');
  };
  return {
    saysItself: true,
    to(p) {
      model.area = { a: from, b: p };
      model.redraw('over');
    },
    end() {
      const { area } = model;
      finish();
      if (!area) return;
      const inside = itemsInArea(model, area);
      const before = itemsChosen(session);
      const items = [...before.filter((item) => item.kind === 'piece' || item.kind === 'fixture')];
      for (const item of inside) if (!isInSet(items, item)) items.push(item);
      if (inside.length === 0) session.announce('Nothing has its middle in the area.');
      else chooseSeveral(session, items);
      isDone();
    },
    cancel: finish,
  };
}

/** Pieces and fixtures whose middle lies in an area (two corners, mm), in the order of the lists. */
function itemsInArea(model: PlanModel, { a, b }: { a: Point; b: Point }): Item[] {
  const isIn = (p: Point): boolean =>
    p.x >= Math.min(a.x, b.x) && p.x <= Math.max(a.x, b.x) && p.y >= Math.min(a.y, b.y) && p.y <= Math.max(a.y, b.y);
  const found: Item[] = [
    ...model.session
      .arrangement()
      .pieces.filter(isIn)
      .map(({ id }): Item => ({ kind: 'piece', id })),
    ...rawRoomOf(model)
      .fixtures.filter(isIn)
      .map(({ id }): Item => ({ kind: 'fixture', id })),
  ];
  const order = itemsInOrder(model.session.arrangement(), model.session.classroom(), rawRoomOf(model));
  return order.filter((item) => found.some((other) => isSame(other, item)));
}

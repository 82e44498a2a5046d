import { beforeEach, describe, expect, it } from 'vitest';
import { areaDrag } from '#client/plan/drag/areaDrag.ts';
import { movePieceDrag } from '#client/plan/drag/movePieceDrag.ts';
import { moveSetDrag } from '#client/plan/drag/setDrags.ts';
import type { Item } from '#client/plan/items.ts';
import { createPlanModel, type PlanModel, surroundings } from '#client/plan/planModel.ts';
import { restWords } from '#client/plan/restWords.ts';
import { gapPulls } from '#client/plan/sameGap.ts';
import { itemsChosen } from '#client/plan/set/chosenSet.ts';
import { snap } from '#client/plan/snap.ts';
import { type PlanSession, planSession } from './planSession.ts';

const held = { isFree: false };
let session: PlanSession;
let model: PlanModel;

// Tables 1.00 m wide: 2 at 1.00–2.00, 3 at 2.90–3.90, so 0.90 m between them; 4 is brought to their right.
beforeEach(() => {
  session = planSession({
    room: {
      corners: [
        { id: 'c1', x: 0, y: 0 },
        { id: 'c2', x: 9000, y: 0 },
        { id: 'c3', x: 9000, y: 5000 },
        { id: 'c4', x: 0, y: 5000 },
      ],
      openings: [],
    },
    pieces: [
      { id: 't2', kind: 'table', x: 1500, y: 2000, width: 1000, depth: 600 },
      { id: 't3', kind: 'table', x: 3400, y: 2000, width: 1000, depth: 600 },
      { id: 't4', kind: 'table', x: 7000, y: 3800, width: 1000, depth: 600 },
      { id: 's9', kind: 'seat', x: 7000, y: 4250, width: 320, depth: 320, table: 't4' },
    ],
  });
  model = createPlanModel(session, () => {});
  model.view = { k: 0.1, x: 0, y: 0 };
});
const piece = (id: string) => {
  const found = session.arrangement().pieces.find((p) => p.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
};
const item = (id: string): Item => ({ kind: 'piece', id });

describe('the same gap', () => {
  const around = () => surroundings(model, new Set(['t4', 's9']));
  const box = (x: number, y = 2030) => ({ ...piece('t4'), x, y });

  it('draws a thing to where its gap is the one that two others of its row have', () => {
    const snapped = snap(box(5260), around(), { tolerance: 60, turnsToWall: false });
    expect(snapped).toMatchObject({ x: 5300, y: 2000 });
    expect(restWords(session, snapped.lines)).toBe(
      '0.90 m from table T3, the same gap as between table T2 and table T3; level with table T3.',
    );
  });

  it('and to the same gap on both sides', () => {
    const between = { ...piece('t4'), width: 400, x: 2430, y: 2030 };
    const snapped = snap(between, around(), { tolerance: 60, turnsToWall: false });
    expect(snapped.x).toBe(2450);
    expect(restWords(session, snapped.lines)).toContain('0.25 m on both sides, from table T2 and from table T3');
  });

  it('counts the wall as the end of a row', () => {
    // From the west wall to table 2 it is 1.00 m: so far right of table 3 as well.
    const pulls = gapPulls(box(5420), around(), 60).filter(({ like }) => like?.between[0].kind === 'wall');
    expect(pulls).toMatchObject([{ by: -20, like: { mm: 1000 }, own: [{ mm: 1000 }] }]);
  });

  // In the row of table 4 are parts of 3 and of a fifth, 1.00 m wide as well and 0.90 m on along the row.
  const beside = (y: number, at = 5300) => ({
    ...around(),
    others: [...around().others.filter(({ id }) => id === 't3'), { ...piece('t2'), id: 't5', x: at, y }],
  });

  it('is one of things that face each other, by half of the shorter one at the least', () => {
    const moved = (y: number, own: number) => gapPulls({ ...box(7160, own) }, beside(y), 60).filter(({ like }) => like !== null);
    // All level: 0.86 m from table 5, which is drawn to 0.90 m.
    expect(moved(2000, 2000)).toMatchObject([{ by: 40, like: { mm: 900, between: [{ id: 't3' }, { id: 't5' }] } }]);
    // Half of table 5 is before table 3, and table 4 before half of both.
    expect(moved(2300, 2150)).toHaveLength(1);
    // They stand diagonally, though both stand before table 4.
    expect(moved(2320, 2160)).toEqual([]);
    // Before table 3, and 100 mm of table 5.
    expect(moved(2000, 2500)).toEqual([]);
  });

  it('is not one that nobody left on purpose: 0.09 m is none, 0.10 m is', () => {
    const narrow = (mm: number) => gapPulls(box(5400 + 2 * mm, 2000), beside(2000, 4400 + mm), 60).filter(({ like }) => like?.mm === mm);
    expect([narrow(90).length, narrow(100).length]).toEqual([0, 1]);
  });

  it('is said in one order, whatever holds the thing better', () => {
    const { lines } = snap(box(5260), around(), { tolerance: 60, turnsToWall: false });
    expect(lines).toHaveLength(2);
    expect(restWords(session, [...lines].reverse())).toBe(restWords(session, lines));
  });

  it('is of one row only: what stands before or behind gives no gap', () => {
    expect(gapPulls(box(5260, 3800), around(), 60)).toEqual([]);
  });
});

describe('dragged to rest', () => {
  it('lies flush with a wall it is brought to within 0.15 m of, however the drawing is enlarged', () => {
    model.view = { k: 0.5, x: 0, y: 0 };
    const drag = movePieceDrag(model, piece('t4'), piece('t4'));
    drag.to({ x: 7000, y: 4560 }, held);
    expect(piece('t4').y).toBe(4700);
    expect(model.store.state().rest).toBe('Flush with the south wall.');
    drag.to({ x: 7000, y: 4540 }, held);
    expect(model.store.state().rest).toBe('');
    drag.end();
    expect(piece('t4').y).toBe(4540);
  });
});

describe('dragging a set', () => {
  it('moves all by the one that was grabbed, chairs too, flush with the wall, as one step', () => {
    session.setView({ chosen: item('t3'), alsoChosen: ['t4'] });
    const drag = moveSetDrag(model, itemsChosen(session), item('t3'), piece('t3'));
    for (let frame = 1; frame <= 5; frame++) drag?.to({ x: 3400, y: 2000 + frame * 80 }, held);
    expect(session.view()).toMatchObject({ preview: { piece: 't3', x: 3400, y: 2400 } });
    expect(session.view().draft?.pieces?.map(({ id, y }) => [id, y])).toEqual([
      ['t3', 2400],
      ['t4', 4200],
      ['s9', 4650],
    ]);
    drag?.to({ x: 3400, y: 2800 }, held);
    drag?.end();
    // The set ends at the front of table 4: its chairs hold it, 0.16 m from their middle to the wall.
    expect([piece('t3').y, piece('t4').y, piece('s9').y]).toEqual([2590, 4390, 4840]);
    expect(session.view()).toMatchObject({ preview: null, draft: null });
    session.undo.takeBack();
    expect([piece('t3').x, piece('t4').y, session.undo.canTakeBack()]).toEqual([3400, 3800, false]);
  });

  it('is as if never touched when given up', () => {
    session.setView({ chosen: item('t2'), alsoChosen: ['t3'] });
    const drag = moveSetDrag(model, itemsChosen(session), item('t2'), piece('t2'));
    drag?.to({ x: 2500, y: 2600 }, held);
    drag?.cancel();
    expect([piece('t2').x, session.undo.canTakeBack(), model.moving]).toEqual([1500, false, null]);
  });

  it('moves by a chair that was chosen beside its table', () => {
    session.setView({ chosen: item('t3'), alsoChosen: ['t4', 's9'] });
    const drag = moveSetDrag(model, itemsChosen(session), item('s9'), piece('s9'));
    const { x, y } = piece('s9');
    drag?.to({ x, y: y - 200 }, held);
    drag?.end();
    expect([piece('t3').y, piece('t4').y, piece('s9').y]).toEqual([1800, 3600, y - 200]);
  });

  it('says no more how it lies once it was given up', () => {
    const drag = movePieceDrag(model, piece('t4'), piece('t4'));
    drag.to({ x: 7000, y: 4690 }, held);
    expect(model.store.state().rest).not.toBe('');
    drag.cancel();
    expect(model.store.state().rest).toBe('');
  });

  it('does not move by a locked one', () => {
    session.commands.changePiece('a1', 't2', { locked: true });
    expect(moveSetDrag(model, [item('t2'), item('t3')], item('t2'), piece('t2'))).toBeNull();
  });
});

describe('an area', () => {
  it('chooses what has its middle in it, beside what was chosen', () => {
    session.setView({ chosen: item('t4') });
    const drag = areaDrag(model, { x: 3600, y: 2700 });
    drag.to({ x: 500, y: 1500 }, held);
    expect(model.area).not.toBeNull();
    drag.end();
    expect(itemsChosen(session).map(({ id }) => id)).toEqual(['t4', 't2', 't3']);
    expect(model.area).toBeNull();
  });

  it('says when it holds nothing', () => {
    const drag = areaDrag(model, { x: 0, y: 0 });
    drag.to({ x: 300, y: 300 }, held);
    drag.end();
    expect(session.said.at(-1)).toBe('Nothing has its middle in the area.');
  });
});

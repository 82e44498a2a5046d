import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createPlanKeys, type PlanKeys } from '#client/plan/keys.ts';
import { createPlanModel, type PlanModel } from '#client/plan/planModel.ts';
import { createPlanPointer } from '#client/plan/pointer.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;
let keys: PlanKeys;
let isFrontHere: boolean;
let fronts: number;
/** How often the list of keys was asked for. */
let lists: number;
const press = (key: string, held: Partial<Record<'shiftKey' | 'altKey' | 'ctrlKey', boolean>> = {}): boolean =>
  keys.press({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...held });
const piece = (id: string) => session.arrangement().pieces.find((p) => p.id === id);

beforeEach(() => {
  session = planSession({
    pieces: [
      { id: 's2', kind: 'shelf', x: 3000, y: 3000, width: 1200, depth: 320, height: 700 },
      { id: 's1', kind: 'shelf', x: 3000, y: 2000, width: 1200, depth: 320, height: 700 },
    ],
  });
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  isFrontHere = true;
  fronts = 0;
  lists = 0;
  const goToFront = () => {
    if (isFrontHere) fronts += 1;
    return isFrontHere;
  };
  keys = createPlanKeys(model, createPlanPointer(model), goToFront, () => {
    lists += 1;
  });
});

describe('keys of the plan', () => {
  it('are listed by ?, unless letter keys are switched off', () => {
    expect([press('?', { shiftKey: true }), lists]).toEqual([true, 1]);
    model.store.set({ hasLetterKeys: false });
    expect([press('?', { shiftKey: true }), lists]).toEqual([false, 1]);
    model.store.set({ hasLetterKeys: true });
  });

  it('goes from thing to thing in list order and leaves at the end', () => {
    const order = ['s1', 's2', 'd1', 'c1', 'c2', 'c3', 'c4'].map((id) => [press('Tab'), session.view().chosen?.id, id]);
    for (const [taken, chosen, expected] of order) expect([taken, chosen]).toEqual([true, expected]);
    expect(press('Tab')).toBe(false);
  });

  it('goes back with Shift, and leaves before the first', () => {
    press('Tab');
    press('Tab');
    expect([press('Tab', { shiftKey: true }), session.view().chosen?.id]).toEqual([true, 's1']);
    expect(press('Tab', { shiftKey: true })).toBe(false);
  });

  it('lets go with Escape; after that Tab leaves, so nobody is held in the drawing', () => {
    press('Tab');
    expect(press('Escape')).toBe(true);
    expect(session.view().chosen).toBeNull();
    expect(press('Tab')).toBe(false);
    expect(press('Tab')).toBe(true);
  });

  it('slides by 0.05 m, with Shift 0.50, with Alt 0.01', () => {
    press('Tab');
    press('ArrowRight');
    press('ArrowDown', { shiftKey: true });
    press('ArrowLeft', { altKey: true });
    expect(piece('s1')).toMatchObject({ x: 3040, y: 2500 });
  });

  it('goes to the front with Enter, or says where it is', () => {
    press('Tab');
    press('Enter');
    expect(fronts).toBe(1);
    expect(session.said.at(-1)).toBe('Its front is open: Tab goes through the trays, Escape comes back to the plan.');
    isFrontHere = false;
    press('Enter');
    expect(fronts).toBe(1);
    expect(session.said.at(-1)).toBe('Its front is open, in place of what stood there.');
  });

  it('opens the front, takes back and says so, puts away', async () => {
    press('Tab');
    press('Enter');
    expect(session.view().frontOf).toEqual({ piece: 's1', side: 'front' });
    press('ArrowUp');
    press('z', { ctrlKey: true });
    expect(piece('s1')?.y).toBe(2000);
    await vi.waitFor(() => expect(session.said.at(-1)).toBe('Taken back: shelf 1 stands where it stood.'), { timeout: 15_000 });
    press('Delete');
    expect(piece('s1')).toBeUndefined();
  });

  it('takes up a verb by its letter and sets it down in the middle of the room with Enter', () => {
    press('s');
    press('Enter');
    const added = session.arrangement().pieces.find((p) => p.name === 'Shelf 3');
    expect(added).toMatchObject({ x: 3000, y: 2500, width: 1200, depth: 320, height: 700 });
    expect(session.view().chosen).toEqual({ kind: 'piece', id: added?.id });
    expect(model.store.state().tool).toBeNull();
  });

  it('leaves letters alone when they are switched off, and those with Ctrl always', () => {
    model.store.set({ hasLetterKeys: false });
    expect(press('s')).toBe(false);
    expect(press('s', { ctrlKey: true })).toBe(false);
    expect(model.store.state().tool).toBeNull();
  });

  it('takes back one corner of walls being drawn at a time, then puts the tool down', () => {
    press('w');
    model.store.set({
      corners: [
        { x: 0, y: 0 },
        { x: 4000, y: 0 },
      ],
    });
    press('Escape');
    expect(model.store.state()).toMatchObject({ corners: [{ x: 0, y: 0 }], tool: { kind: 'wall' } });
    press('Escape');
    press('Escape');
    expect(model.store.state()).toMatchObject({ corners: [], tool: null });
  });
});

import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createPlanKeys, type PlanKeys } from '#client/plan/keys.ts';
import { createPlanModel, type PlanModel } from '#client/plan/planModel.ts';
import { planStoreOf } from '#client/plan/planStore.ts';
import { createPlanPointer } from '#client/plan/pointer.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;
let keys: PlanKeys;
const press = (key: string, held: { altKey?: boolean; ctrlKey?: boolean; code?: string } = {}): boolean =>
  keys.press({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...held });
const chosen = () => [session.view().chosen?.id, ...session.view().alsoChosen];
const piece = (id: string) => session.arrangement().pieces.find((p) => p.id === id);

beforeEach(() => {
  session = planSession({
    pieces: [
      { id: 's1', kind: 'shelf', x: 2000, y: 2000, width: 1200, depth: 320 },
      { id: 's2', kind: 'shelf', x: 2000, y: 3000, width: 1200, depth: 320 },
      { id: 's3', kind: 'shelf', x: 4500, y: 3000, width: 1200, depth: 320 },
    ],
  });
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  keys = createPlanKeys(
    model,
    createPlanPointer(model),
    () => true,
    () => {},
  );
});

describe('gathering several by the keys', () => {
  it('goes from thing to thing without choosing, adds, leaves out, and slides them all', async () => {
    press('v');
    expect(session.said.at(-1)).toContain('Tab goes from thing to thing, Enter chooses or leaves out');
    press('Tab');
    expect([chosen(), session.said.at(-1)]).toEqual([[undefined], 'Shelf 1. Enter chooses it.']);
    press('Enter');
    press('Tab');
    press('Tab');
    press(' ');
    expect(chosen()).toEqual(['s1', 's3']);
    press('Escape');
    expect(session.said.at(-1)).toBe('2 things: shelf 1 and shelf 3. Arrows slide them.');
    press('ArrowRight');
    await vi.waitFor(() => expect(['s1', 's2', 's3'].map((id) => piece(id)?.x)).toEqual([2050, 2000, 4550]), 10_000);
    press('m');
    await vi.waitFor(() => expect(['s1', 's3'].map((id) => piece(id)?.x)).toEqual([4550, 2050]));
    press('Delete');
    await vi.waitFor(() => expect(session.arrangement().pieces.map(({ id }) => id)).toEqual(['s2']));
  });

  it('leaves the drawing after the last thing, doors and walls not being for several', () => {
    press('v');
    expect(['s1', 's2', 's3'].map(() => press('Tab'))).toEqual([true, true, true]);
    expect(press('Tab')).toBe(false);
  });

  it('takes all that stands at once', async () => {
    press('a', { ctrlKey: true });
    expect(chosen()).toEqual(['s1', 's2', 's3']);
    press('y');
    await vi.waitFor(() => expect(session.said.at(-1)).toMatch(/between each and the next|too long/), 10_000);
  });
});

describe('the tape by the keys', () => {
  it('is laid from thing to thing', async () => {
    press('r');
    for (const key of ['Tab', 'Enter', 'Tab', 'Enter']) press(key);
    const { state } = planStoreOf(session);
    await vi.waitFor(() => expect(state().tape.map(({ y }) => y)).toEqual([2160, 2840]), 10_000);
    expect(session.said).toContain('Tape: 0.68 m straight from edge to edge, between shelf 1 and shelf 2.');
    press('Escape');
    expect(planStoreOf(session).state()).toMatchObject({ tool: null, tape: [], cursor: null });
  });
});

describe('turning by the keys', () => {
  it('is by 15 degrees, with Alt free by one, whatever the keyboard writes then', () => {
    press('Tab');
    press(']');
    press('‘', { altKey: true, code: 'BracketRight' });
    press('‘', { altKey: true, code: 'BracketRight' });
    press('[', { altKey: true, code: 'BracketLeft' });
    expect(piece('s1')?.rotation).toBe(16);
  });
});

describe('a cross moved by the arrows', () => {
  it('puts a remark on any place, and on the thing that Tab went to', () => {
    press('e');
    expect(session.said.at(-1)).toContain('Arrows move a cross');
    planStoreOf(session).set({ cross: { x: 1000, y: 1000 } });
    press('ArrowRight');
    press('ArrowDown', { altKey: true });
    expect(session.said.at(-1)).toBe('B2: 1.05 m from west, 1.01 m from north.');
    press('Enter');
    expect(planStoreOf(session).state().remarkAt).toEqual({ at: { x: 1050, y: 1010 }, on: null });
    press('Tab');
    expect(session.said.at(-1)).toBe('Shelf 1. Enter puts the remark there.');
    press('Enter');
    expect(planStoreOf(session).state().remarkAt).toEqual({ at: { x: 2000, y: 2000 }, on: 's1' });
  });

  it('begins in the middle of what is seen, says what it is on, and the paper follows it', () => {
    press('e');
    model.view = { k: 0.1, x: 0, y: 0 };
    press('ArrowUp');
    // The middle of 600 × 500 px.
    expect(planStoreOf(session).state().cross).toEqual({ x: 3000, y: 2450 });
    planStoreOf(session).set({ cross: { x: 2000, y: 2050 } });
    press('ArrowUp');
    expect(session.said.at(-1)).toBe('C3, on shelf 1: 2.00 m from west, 2.00 m from north.');
    const { x } = model.view;
    planStoreOf(session).set({ cross: { x: 5700, y: 2000 } });
    press('ArrowRight');
    expect(model.view.x).toBeLessThan(x);
  });

  it('lays the tape between places without a thing', () => {
    press('r');
    planStoreOf(session).set({ cross: { x: 1000, y: 1000 } });
    press('Enter');
    return vi.waitFor(() => expect(planStoreOf(session).state().tape).toEqual([{ x: 1000, y: 1000 }]));
  });

  it('sets the scale of the picture by two ends, and slides the picture', () => {
    const picture = {
      source: 'data:image/png;base64,iVBORw0KGgo=',
      width: 100,
      height: 80,
      x: 3000,
      y: 2000,
      scale: 50,
      rotation: 0,
      fade: 40,
      shown: true,
      name: 'plan.png',
    };
    session.commands.changeRoom({ picture });
    const store = planStoreOf(session);
    store.set({ tool: { kind: 'picture', step: 'look' } });
    press('ArrowLeft');
    expect(session.classroom().room.picture).toMatchObject({ x: 2950, y: 2000 });
    store.set({ tool: { kind: 'picture', step: 'scale' }, cross: { x: 1000, y: 1000 } });
    press('Enter');
    press('ArrowRight');
    press('Enter');
    expect(store.state().picturePoints).toEqual([
      { x: 1000, y: 1000 },
      { x: 1050, y: 1000 },
    ]);
    expect(session.said.at(-1)).toBe('Both ends are here. Type how long it is.');
  });
});

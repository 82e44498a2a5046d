import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createPlanModel, fitBeside, fitWhenFree, fitWholeRoom, type PlanModel } from '#client/plan/planModel.ts';
import { createPlanPointer, type PlanPointer, type Press } from '#client/plan/pointer.ts';
import { toScreen } from '#client/plan/viewport.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;
let pointer: PlanPointer;
const press = (at: { x: number; y: number }): Press => ({ id: 1, at, isTouch: false, isFree: false, isPan: false });

beforeEach(() => {
  vi.stubGlobal('requestAnimationFrame', () => 1);
  session = planSession();
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  fitWholeRoom(model);
  pointer = createPlanPointer(model);
});

afterEach(() => vi.unstubAllGlobals());

it('the room is fitted above what a tool asks, and not while a finger is down: what is pressed is meant where the paper lay', () => {
  const { view } = model;
  model.store.set({ tool: { kind: 'remark' } });
  const at = { x: 3000, y: 2500 };
  pointer.down(press(toScreen(view, at)));
  model.store.set({ covered: 120 });
  fitWhenFree(model);
  expect(model.view).toBe(view);
  pointer.up(press(toScreen(view, at)));
  expect(model.store.state().remarkAt?.at.x).toBeCloseTo(at.x, 6);
  expect(model.store.state().remarkAt?.at.y).toBeCloseTo(at.y, 6);
  expect(toScreen(model.view, { x: 0, y: 5000 }).y).toBeLessThan(500 - 120);
  expect(toScreen(view, { x: 0, y: 5000 }).y).toBeGreaterThan(500 - 120);
});

it('the paper stays where somebody has put it', () => {
  pointer.wheel({ x: 300, y: 250 }, { x: 0, y: -100 }, true);
  const { view } = model;
  model.store.set({ covered: 120 });
  fitWhenFree(model);
  expect(model.view).toBe(view);
});

it('the drawing stays where it is under a low strip, makes room for a high one, and comes back when that goes', () => {
  const { view } = model;
  const foot = 500 - toScreen(view, { x: 0, y: 5000 }).y;
  model.store.set({ covered: Math.floor(foot) - 1 });
  fitBeside(model);
  expect(model.view).toBe(view);
  model.store.set({ covered: 160 });
  fitBeside(model);
  expect(toScreen(model.view, { x: 0, y: 5000 }).y).toBeLessThan(500 - 160);
  model.store.set({ covered: 0 });
  fitBeside(model);
  expect(model.view).toEqual(view);
});

import { expect, it } from 'vitest';
import { type Day, dayOf } from '#client/moveDay/dayOf.ts';
import { sayEarly } from '#client/moveDay/sayEarly.ts';
import { stepActions } from '#client/moveDay/stepActions.ts';
import { planSession } from '#tests/unit/client/plan/planSession.ts';

const shelf = (y: number) => ({ id: 's1', kind: 'shelf', x: 200, y, rotation: -90, width: 1000, depth: 400 }) as const;

function opened() {
  const session = planSession({
    current: 'a1',
    arrangements: [
      { id: 'a1', name: 'now', pieces: [shelf(1700)] },
      { id: 'a2', name: 'then', pieces: [shelf(2700)] },
    ],
  });
  const day = (): Day => {
    const { arrangements, moveDay } = session.classroom();
    const [from, to] = arrangements;
    if (!from || !to) throw new Error('two arrangements');
    return dayOf(session.classroom(), from, to, moveDay);
  };
  return { session, day, actions: () => stepActions(session, day(), 'a1', 'a2') };
}

it('a tick is kept in the document, said, and taken back as one step', () => {
  const { session, day, actions } = opened();
  actions().mark('move:s1', 'done');
  expect(day().steps.map(({ state }) => state.state)).toEqual(['done', 'open', 'open']);
  actions().mark('move:s1', 'open');
  expect(day().steps[0]?.state.state).toBe('open');
  session.undo.takeBack();
  expect(day().steps[0]?.state.state).toBe('done');
  expect(session.said).toEqual(['Step 1 is done.', 'Step 1 is open again.']);
});

it('says which later steps wait for what cannot be done', () => {
  const { session, day, actions } = opened();
  actions().mark('move:s1', 'cannot', 'it is screwed to the floor');
  actions().mark('tape', 'cannot');
  expect(day().steps[0]?.state).toEqual({ state: 'cannot', by: '', why: 'it is screwed to the floor' });
  expect(session.said).toEqual(['Step 1 cannot be done. Steps 2 and 3 wait for it.', 'Step 3 cannot be done. No other step waits for it.']);
});

it('moves a step one place, not beyond the ends, and back to the order worked out', () => {
  const { session, day, actions } = opened();
  const order = () => day().steps.map(({ step }) => step.id);
  actions().shift('move:s1', -1);
  expect(day().isHandOrder).toBe(false);
  actions().shift('move:s1', 1);
  expect(order()).toEqual(['mats', 'move:s1', 'tape']);
  expect(day().steps.map(({ trouble }) => trouble?.later.length ?? 0)).toEqual([1, 0, 0]);
  actions().resetOrder();
  expect(order()).toEqual(['move:s1', 'mats', 'tape']);
  expect(session.said).toEqual(['Step 1 is step 2 now.', 'The steps stand in the order that was worked out.']);
});

it('ticks a step before the one it waits for, says so, and marks it until that one is done', () => {
  const { session, day, actions } = opened();
  const early = () => day().steps.map((one) => sayEarly(day(), one));
  actions().mark('mats', 'done');
  expect(day().steps.map(({ state }) => state.state)).toEqual(['open', 'done', 'open']);
  expect(session.said).toEqual(['Step 2 is done. Step 1, which it waits for, is not done.']);
  expect(early()[1]).toBe('Step 1, which it waits for, is not done.');
  actions().mark('move:s1', 'done');
  expect(early()).toEqual([null, null, null]);
  expect(session.said.at(-1)).toBe('Step 1 is done.');
});

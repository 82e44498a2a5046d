import { expect, it } from 'vitest';
import { laidChanges } from '#client/laidOver/laidChanges.ts';
import { laidPart, laidUnder, otherOf, toggleLaid } from '#client/laidOver/laidOf.ts';
import { changedView, coherentView, firstView } from '#client/session/view.ts';
import { planSession } from '#tests/unit/client/plan/planSession.ts';

const arrangements = ['a1', 'a2', 'a3'].map((id, i) => ({
  id,
  name: `plan ${i + 1}`,
  pieces: [{ id: 's1', kind: 'shelf' as const, x: 1000 + 400 * i, y: 1000, width: 1000, depth: 400 }],
}));

it('lays how the room stands under the shown one, or the next where that is shown; the same verb takes it off', async () => {
  const session = planSession({ arrangements, current: 'a1' });
  expect(otherOf(session)?.id).toBe('a2');
  session.setView({ arrangement: 'a3' });
  expect(otherOf(session)?.id).toBe('a1');
  await toggleLaid(session);
  expect(laidUnder(session)?.id).toBe('a1');
  // What draws it is here before it is laid.
  expect(laidPart()).not.toBeNull();
  await toggleLaid(session);
  expect(laidUnder(session)).toBeNull();
  expect(session.said).toEqual(['"plan 1" lies dashed under the shown one.', 'One arrangement is shown.']);
});

it('reckons what differs once for two lists of pieces', () => {
  const [one, two] = planSession({ arrangements }).classroom().arrangements;
  if (!one || !two) throw new Error('two arrangements');
  const changes = laidChanges(one, two);
  expect(changes.map(({ id, by }) => [id, by])).toEqual([['s1', 400]]);
  expect(laidChanges(one, two)).toBe(changes);
  expect(laidChanges(two, one)).not.toBe(changes);
});

it('the two change places when the one that lies under is shown; one that is gone lies under nothing', () => {
  const classroom = planSession({ arrangements, current: 'a1' }).classroom();
  const laid = changedView(classroom, firstView(classroom), { laid: 'a2' });
  expect(changedView(classroom, laid, { arrangement: 'a2' })).toMatchObject({ arrangement: 'a2', laid: 'a1' });
  expect(changedView(classroom, laid, { arrangement: 'a3' })).toMatchObject({ arrangement: 'a3', laid: 'a2' });
  const without = { ...classroom, arrangements: classroom.arrangements.filter(({ id }) => id !== 'a2') };
  expect(coherentView(without, laid).laid).toBeNull();
});

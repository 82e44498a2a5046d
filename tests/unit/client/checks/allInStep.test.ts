import { expect, it } from 'vitest';
import { putAllInStep } from '#client/checks/allInStep.ts';
import { mendsOfOrder } from '#client/checks/mendsOfOrder.ts';
import type { Session } from '#client/session/types.ts';
import { analyse, type Report } from '#model/analysis/report.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { sequence } from '#model/rules/order/sequence.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

/** Two strands on two shelves, each the wrong way round. Invented. */
const strand = (name: string) => [1, 2, 3].map((step) => tray(`${name}${step}`, { strand: name, step, area: 'sensorial' }));
const room = plainRoom({
  pieces: [shelf('a'), shelf('b', { x: 4500 })],
  materials: [...strand('sight'), ...strand('touch')],
  placements: placed({ 'a-1': ['sight2', 'sight1', 'sight3'], 'b-1': ['touch3', 'touch1', 'touch2'] }),
});

/** A session over a real document, whose checks answer a moment after each change. */
function sessionOn(answersIn = 1) {
  const document = createDocument(room);
  const said: string[] = [];
  const listeners = new Set<() => void>();
  let checked: { of: Classroom; report: Report } | null = null;
  const look = (): void => {
    checked = { of: document.read(), report: analyse(document.read(), { rules: [sequence] }) };
    for (const listener of [...listeners]) listener();
  };
  look();
  document.onChange(() => setTimeout(look, answersIn));
  const session = {
    commands: document.commands,
    undo: document.undo,
    arrangement: () => document.read().arrangements[0],
    report: () => checked?.report ?? null,
    isThinking: () => checked?.of !== document.read(),
    announce: (text: string) => said.push(text),
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  } as unknown as Session;
  return { session, document, said };
}
const open = (session: Session) => mendsOfOrder(session.report()?.findings ?? []);

it('does each mend as things stand by then, and all of it is one step to take back', async () => {
  const { session, document, said } = sessionOn();
  const before = document.read().arrangements[0]?.placements;
  expect(open(session)).toHaveLength(2);
  const counts: number[] = [];
  await putAllInStep(session, (count) => counts.push(count));
  expect(counts).toEqual([1, 2]);
  expect(open(session)).toEqual([]);
  expect(said).toEqual([
    expect.stringMatching(/^Done: \d+ trays stand elsewhere now, in one step to take back\. Every shelf is in order\.$/),
  ]);
  document.undo.takeBack();
  expect(document.read().arrangements[0]?.placements).toEqual(before);
  expect(document.undo.canTakeBack()).toBe(false);
});

it('ends where somebody changes the shelves meanwhile', async () => {
  const { session, document, said } = sessionOn(30);
  const work = putAllInStep(session, () => document.commands.movePiece('a1', 'b', { x: 3900, y: 160, rotation: 0 }));
  await work;
  expect(said[0]).toMatch(/^Done: \d+ trays? stands? elsewhere now.*Somebody changed the shelves meanwhile/);
  expect(open(session).length).toBeGreaterThan(0);
});

import { describe, expect, it, vi } from 'vitest';
import { createMendStore } from '#client/mend/mendStore.ts';
import { mustBeWider } from '#client/mend/OnlyLink.tsx';
import { sayHowFar, sayWhat } from '#client/mend/sayProgress.ts';
import { planStoreOf } from '#client/plan/planStore.ts';
import { isOfWidth } from '#client/plan/reportParts.ts';
import type { Session } from '#client/session/types.ts';
import { lookForMend } from '#client/worker/mendDesk.ts';
import type { MendAnswer, MendQuestion } from '#client/worker/mendMessages.ts';
import { analyse } from '#model/analysis/report.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { planSession } from '../plan/planSession.ts';

/** Two boxes across the room, 700 mm apart; the left one has 300 mm to its wall. */
const room: PlainRoomChange = {
  pieces: [
    { id: 'left', kind: 'other', name: 'left box', x: 1475, y: 2000, width: 2350, depth: 200, height: 900 },
    { id: 'right', kind: 'other', name: 'right box', x: 4675, y: 2000, width: 2650, depth: 200, height: 900 },
    { id: 's1', kind: 'shelf', x: 3000, y: 4840, rotation: 180, width: 1200, depth: 320, height: 700, anchored: true, locked: true },
  ],
};

interface FakePort {
  onmessage: ((event: MessageEvent<MendAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  asked: MendQuestion | null;
  isEnded: boolean;
}

/** A store over a real document, whose worker answers when told to. */
function opened(change: PlainRoomChange = room) {
  const plan = planSession(change);
  const session: Session = { ...plan, subscribe: (listener) => plan.document.onChange(listener) };
  const ports: FakePort[] = [];
  const store = createMendStore(session, () => {
    const port: FakePort = { onmessage: null, onerror: null, asked: null, isEnded: false };
    ports.push(port);
    return Object.assign(port, {
      postMessage: (question: MendQuestion) => {
        port.asked = structuredClone(question);
      },
      terminate: () => {
        port.isEnded = true;
      },
    });
  });
  const last = (): FakePort => ports.at(-1) as FakePort;
  const tell = (data: MendAnswer): void => last().onmessage?.({ data } as MessageEvent<MendAnswer>);
  const answer = (): void => {
    const { asked } = last();
    if (asked) lookForMend(asked, (message) => tell(structuredClone(message)));
  };
  const xs = () => session.arrangement().pieces.map(({ x }) => x);
  return { session, store, said: plan.said, ports, last, tell, answer, xs, proposal: () => planStoreOf(session).state().proposal };
}

describe('a mend of the ways on the page', () => {
  it('is looked for aside, shown in pencil, done in one step, and taken back', async () => {
    const { session, store, answer, xs, proposal, said, last } = opened();
    const before = xs();
    store.look();
    expect(store.state()).toEqual({ at: 'looking', only: null, progress: null });
    answer();
    // 32 in of a short gap (A02): 812.8 less 700, in whole mm 113.
    expect(store.state()).toMatchObject({ at: 'told', mend: { end: 'found', total: 113 } });
    expect(proposal()).toMatchObject([{ do: 'move-piece', piece: 'left', x: 1475 - 113, y: 2000 }]);
    expect(last().isEnded).toBe(true);
    await vi.waitFor(() => expect(said.at(-1)).toBe('Found: Left box: 0.113 m towards the west wall.'), { timeout: 15_000 });
    store.doIt();
    expect(xs()).toEqual([1475 - 113, ...before.slice(1)]);
    expect(proposal()).toBeNull();
    expect(said.at(-1)).toBe('Done: one piece moved. Take back undoes it.');
    expect(store.state()).toEqual({ at: 'rest', word: 'Done: one piece moved. Take back undoes it.', only: null });
    session.undo.takeBack();
    expect(xs()).toEqual(before);
    // It is no longer so, and nobody has to be told.
    expect(store.state()).toEqual({ at: 'rest', word: null, only: null });
    expect(said.at(-1)).toBe('Done: one piece moved. Take back undoes it.');
  });

  it('is left as it is when told so, which is said until something moves', () => {
    const { session, store, answer, tell, xs, proposal, said } = opened();
    const before = xs();
    store.look();
    answer();
    store.leaveIt();
    expect([xs(), proposal(), store.state().at]).toEqual([before, null, 'rest']);
    expect(said.at(-1)).toBe('Left as it is: nothing was moved.');
    session.commands.addRemark({ text: 'mind the rug', x: 100, y: 100 });
    expect(store.state()).toMatchObject({ word: 'Left as it is: nothing was moved.' });
    session.commands.movePiece('a1', 'right', { x: 4680, y: 2000 });
    expect(store.state()).toEqual({ at: 'rest', word: null, only: null });
    // What broke stays said: nobody may have seen it yet.
    store.look();
    tell({ failure: 'out of memory' });
    session.commands.movePiece('a1', 'right', { x: 4690, y: 2000 });
    expect(store.state()).toMatchObject({ word: 'The search broke (out of memory). Nothing was changed.' });
  });

  it('says how far the search is, and stops when asked', () => {
    const { store, tell, last, said } = opened();
    store.look();
    const progress = { looks: 50, total: 128, place: null, best: null };
    tell({ progress });
    expect(store.state()).toEqual({ at: 'looking', only: null, progress });
    store.stop();
    const word =
      'Stopped. Nothing was changed. Looked at was every way. The ways were measured 50 times. Among those tried no change of less than 0.12 m in all does it.';
    expect([store.state(), last().isEnded]).toEqual([{ at: 'rest', word, only: null }, true]);
    expect(said.at(-1)).toBe(word);
    store.look();
    store.stop();
    expect(said.at(-1)).toBe('Stopped. Nothing was changed.');
  });

  it('names the narrowest place while it looks at it alone, and keeps what it found when it is stopped', async () => {
    const { session, store, last, tell, proposal, said } = opened();
    store.look('narrowest');
    const { asked } = last();
    if (!asked) throw new Error('nothing was asked');
    const answers: MendAnswer[] = [];
    lookForMend(asked, (answer) => answers.push(answer));
    const [first] = answers;
    if (!first || !('progress' in first)) throw new Error('it tells how far it is');
    expect(sayWhat(session.scene(), 'narrowest', first.progress)).toBe('the narrowest place, between left box and right box, at D3');
    expect(sayWhat(session.scene(), 'narrowest', null)).toBe('the narrowest place');
    expect(sayHowFar(session.scene(), first.progress)).not.toContain('0.00');
    tell(first);
    store.stop();
    expect(store.state()).toMatchObject({ at: 'rest', only: 'narrowest' });
    store.look('narrowest');
    const withBest = answers.find((answer) => 'progress' in answer && answer.progress.best);
    if (!withBest || !('progress' in withBest)) throw new Error('what was found is told before the end');
    expect(sayHowFar(session.scene(), withBest.progress)).toMatch(
      /times\. Found: a change of 0\.113 m in all; a smaller one is being looked for\.$/,
    );
    tell(withBest);
    store.stop();
    expect(store.state()).toMatchObject({ at: 'told', isStopped: true, mend: { end: 'found', total: 113 } });
    expect([proposal()?.length, last().isEnded]).toEqual([1, true]);
    await vi.waitFor(() => expect(said.at(-1)).toBe('Found: Left box: 0.113 m towards the west wall.'), { timeout: 15_000 });
  });

  it('goes when somebody changes the plan, and says so; a remark changes nothing', () => {
    const { session, store, answer, proposal, last } = opened();
    store.look();
    session.commands.movePiece('a1', 'right', { x: 4680, y: 2000 });
    expect(store.state()).toEqual({
      at: 'rest',
      word: 'The plan has changed, so the search was stopped. Look again.',
      only: null,
    });
    expect(last().isEnded).toBe(true);
    store.look();
    answer();
    session.commands.addRemark({ text: 'mind the rug', x: 100, y: 100 });
    expect(store.state().at).toBe('told');
    session.commands.movePiece('a1', 'right', { x: 4690, y: 2000 });
    expect(store.state()).toEqual({
      at: 'rest',
      word: 'The plan has changed, so the proposal is gone. Look again.',
      only: null,
    });
    expect(proposal()).toBeNull();
  });

  it('is looked for again without a piece, and with it when it may move again', () => {
    const { store, answer, last } = opened();
    store.look();
    answer();
    store.keep('left');
    expect(last().asked?.options).toEqual({ arrangement: 'a1', keep: ['left'] });
    answer();
    const state = store.state();
    if (state.at !== 'told') throw new Error('the search has ended');
    if (state.mend.end === 'found') expect(state.mend.moves.map(({ piece }) => piece)).not.toContain('left');
    store.look('narrowest');
    expect(last().asked?.options).toEqual({ arrangement: 'a1', keep: ['left'], only: 'narrowest' });
    expect(store.state()).toEqual({ at: 'looking', only: 'narrowest', progress: null });
    store.release('left');
    expect(store.kept()).toEqual([]);
  });

  it('says so when the search breaks, and keeps the plan', () => {
    const { store, tell, last, xs } = opened();
    const before = xs();
    store.look();
    tell({ failure: 'out of memory' });
    expect(store.state()).toEqual({ at: 'rest', word: 'The search broke (out of memory). Nothing was changed.', only: null });
    store.look();
    last().onerror?.({ message: '', preventDefault: () => {} } as ErrorEvent);
    expect(store.state()).toEqual({ at: 'rest', word: 'The search broke (the browser refused). Nothing was changed.', only: null });
    expect(xs()).toEqual(before);
  });

  it('ends its worker when the classroom is closed', () => {
    const { session, store, last } = opened();
    store.look();
    session.document.doc.destroy();
    expect(last().isEnded).toBe(true);
  });
});

describe('only as wide as it must be', () => {
  it('is asked for only where a way must be wider', () => {
    const report = analyse(plainRoom(room));
    const { findings } = report;
    // 700 mm between the boxes, and 711 mm must be.
    expect(findings.filter(isOfWidth).map(({ severity }) => severity)).toContain('must');
    expect([mustBeWider(null), mustBeWider(report)]).toEqual([false, true]);
    const should = findings.map((finding) => (isOfWidth(finding) ? { ...finding, severity: 'should' as const } : finding));
    expect(mustBeWider({ ...report, findings: should })).toBe(false);
    expect(mustBeWider({ ...report, findings: findings.map((finding) => ({ ...finding, leftReason: 'for today' })) })).toBe(false);
  });
});

describe('the desk that looks for a mend', () => {
  it('tells how far it is and then what came of it', () => {
    const told: MendAnswer[] = [];
    lookForMend({ classroom: plainRoom(room), options: {} }, (answer) => told.push(answer));
    expect(told[0]).toMatchObject({ progress: { total: 0 } });
    expect(told.at(-1)).toMatchObject({ mend: { end: 'found' } });
    expect(told.filter((answer) => 'mend' in answer)).toHaveLength(1);
  });

  it('tells in words when it breaks', () => {
    const told: MendAnswer[] = [];
    lookForMend({ classroom: { ...plainRoom(room), arrangements: [] }, options: {} }, (answer) => told.push(answer));
    expect(told).toEqual([{ failure: expect.stringContaining('arrangement') }]);
  });
});

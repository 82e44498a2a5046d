import { describe, expect, it } from 'vitest';
import { restingOf } from '#client/session/resting.ts';
import { planSession } from '../plan/planSession.ts';

const shelf = { id: 's1', kind: 'shelf', x: 1000, y: 160, width: 1200, depth: 320 } as const;
const dragged = { piece: 's1', x: 2000, y: 160, rotation: 0 };

describe('how things stand while one is dragged', () => {
  it('is the session itself while nothing is in hand', () => {
    const session = planSession({ pieces: [shelf] });
    const resting = restingOf(session);
    session.commands.movePiece('a1', 's1', { x: 1500, y: 160, rotation: 0 });
    expect(resting.classroom()).toBe(session.classroom());
    expect(resting.arrangement().pieces[0]?.x).toBe(1500);
    expect(resting.scene().bodyById.get('s1')?.center.x).toBe(1500);
  });

  it('stays the same object through the drag, whatever is written meanwhile', () => {
    const session = planSession({ pieces: [shelf] });
    const resting = restingOf(session);
    session.setView({ preview: dragged });
    const before = [resting.classroom(), resting.arrangement(), resting.scene()];
    session.commands.movePiece('a1', 's1', { x: 2000, y: 160, rotation: 0 });
    session.setView({ preview: { ...dragged, x: 2100 } });
    expect([resting.classroom(), resting.arrangement(), resting.scene()]).toEqual(before);
    expect(resting.classroom()).toBe(before[0]);
    expect(resting.scene()).toBe(before[2]);
    expect(resting.scene().bodyById.get('s1')?.center.x).toBe(1000);
  });

  it('is how it stands now once it is let go, and again for the next drag', () => {
    const session = planSession({ pieces: [shelf] });
    const resting = restingOf(session);
    session.setView({ preview: dragged });
    resting.classroom();
    session.commands.movePiece('a1', 's1', { x: 2000, y: 160, rotation: 0 });
    session.setView({ preview: null });
    expect(resting.scene().bodyById.get('s1')?.center.x).toBe(2000);
    session.setView({ preview: { ...dragged, x: 3000 } });
    expect(resting.arrangement().pieces[0]?.x).toBe(2000);
  });
});

// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { pointedAt, pointOut } from '#client/checks/pointOut.ts';
import { showFinding } from '#client/checks/showFinding.ts';
import { planStoreOf } from '#client/plan/planStore.ts';
import type { Session, View } from '#client/session/types.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { finding } from './finding.ts';

const room = plainRoom({
  pieces: [
    { id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1200, depth: 320, levels: [{ id: 'l1', surface: 300 }] },
    { id: 's2', kind: 'shelf', x: 3000, y: 1000, width: 1200, depth: 320, levels: [{ id: 'l2', surface: 300 }] },
    { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600 },
  ],
  materials: [
    { id: 'm1', name: 'Pouring' },
    { id: 'm2', name: 'Folding' },
    { id: 'm3', name: 'Sorting' },
  ],
  placements: [
    { material: 'm1', piece: 's1', side: 'front', level: 'l1', x: 50 },
    { material: 'm2', piece: 's2', side: 'front', level: 'l2', x: 50 },
    { material: 'm3', piece: 's1', side: 'front', level: 'l1', x: 500 },
  ],
});
const scene = buildScene(room);

function sessionHere() {
  const said: string[] = [];
  let view: Partial<View> = {};
  const session = {
    scene: () => scene,
    setView: (change: Partial<View>) => {
      view = { ...view, ...change };
    },
    announce: (text: string) => said.push(text),
  } as unknown as Session;
  return { session, said, view: () => view };
}

describe('what a finding points at', () => {
  it.each([
    ['order/sequence', ['m1', 'm3', 'm2'], 'order/sequence:m1', ['s1', 's2'], ['m1', 'm3'], 's1'],
    ['reach/see', ['s2'], 'reach/see:s2#front/l2', ['s2'], ['m2'], 's2'],
    ['way/width', ['s1', 'd1'], 'way/width:s1', ['s1', 'd1'], [], undefined],
    ['reach/seat', ['t1'], 'reach/seat:t1', ['t1'], [], undefined],
  ] as const)('of %s %j', (rule, subjects, key, things, trays, front) => {
    const at = pointedAt(finding({ rule, subjects, key }), scene);
    expect({ things: at.things, trays: at.trays, front: at.front?.piece.id }).toEqual({ things, trays, front });
  });
});

it('marks only the trays that a finding of a board means', () => {
  const of = finding({ rule: 'reach/take', subjects: ['s1'], key: 'reach/take:s1#front/l1', trays: ['m3'] });
  expect(pointedAt(of, scene)).toMatchObject({ things: ['s1'], trays: ['m3'], front: { side: 'front' } });
});

describe('Show', () => {
  it('chooses the tray that the words begin with, whichever the trouble is filed under', () => {
    const { session, view } = sessionHere();
    showFinding(session, finding({ rule: 'order/sequence', subjects: ['m1', 'm3'], trays: ['m3'] }));
    expect(view().chosen).toEqual({ kind: 'tray', id: 'm3' });
    showFinding(session, finding({ rule: 'reach/take', subjects: ['s1'], trays: ['m3'] }));
    expect(view().chosen).toEqual({ kind: 'piece', id: 's1' });
  });

  it('turns to the front that a tray stands on, marks it and says so', () => {
    const { session, said, view } = sessionHere();
    pointOut(session, finding({ rule: 'order/sequence', subjects: ['m2'], key: 'k' }));
    expect(view()).toMatchObject({ finding: 'k', chosen: { kind: 'tray', id: 'm2' }, frontOf: { piece: 's2', side: 'front' } });
    expect(planStoreOf(session).state()).toMatchObject({ pointed: 'k', frontAsked: 1, drawingAsked: 0 });
    expect(said).toEqual(['Marked on the front of shelf 2: Folding.']);
  });

  it('turns to the drawing for what stands in the room, the whole of it when the paper was moved', () => {
    const { session, said } = sessionHere();
    planStoreOf(session).set({ isMoved: true });
    pointOut(session, finding({ key: 'w' }));
    expect(planStoreOf(session).state()).toMatchObject({ pointed: 'w', frontAsked: 0, drawingAsked: 1, wholeRoom: 1 });
    expect(said).toEqual(['Marked on the plan: shelf 1.']);
  });

  it('says that the place is ringed where a way is narrow', () => {
    const { session, said } = sessionHere();
    pointOut(session, finding({ rule: 'way/width', subjects: ['s1'], key: 'n', at: { x: 2000, y: 2000 } }));
    expect(said).toEqual(['Marked on the plan: shelf 1. A ring is round the place where it is narrow.']);
  });

  it('stays where it is for what has no place', () => {
    const { session, said } = sessionHere();
    pointOut(session, finding({ subjects: ['classroom'], key: 'c' }));
    expect(planStoreOf(session).state()).toMatchObject({ pointed: null, drawingAsked: 0, frontAsked: 0 });
    expect(said).toEqual(['It is of the whole room: no one place shows it.']);
  });
});

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { bodyOfPiece } from '#client/plan/bodies.ts';
import { stepWriter } from '#client/plan/drag/drag.ts';
import { movePieceDrag } from '#client/plan/drag/movePieceDrag.ts';
import { moveCornerDrag, moveOpeningDrag, moveWallDrag } from '#client/plan/drag/roomDrags.ts';
import { handleDrag } from '#client/plan/drag/shapeDrags.ts';
import { handlesOf } from '#client/plan/handles.ts';
import { createPlanModel, type LayerName, type PlanModel, roomOf } from '#client/plan/planModel.ts';
import { carried } from '#client/plan/seats.ts';
import { type PlanSession, planSession } from './planSession.ts';

const held = { isFree: false };
let session: PlanSession;
let drawn: LayerName[];
let model: PlanModel;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['performance'] });
  session = planSession({
    pieces: [
      { id: 's1', kind: 'shelf', x: 3000, y: 160, width: 1200, depth: 320, height: 700 },
      { id: 't1', kind: 'table', x: 2000, y: 3000, width: 1200, depth: 600 },
      { id: 'c1', kind: 'seat', x: 2000, y: 3450, width: 320, depth: 320, table: 't1' },
    ],
  });
  drawn = [];
  model = createPlanModel(session, (...names) => drawn.push(...names));
  model.view = { k: 0.1, x: 0, y: 0 };
});

afterEach(() => {
  vi.useRealTimers();
});

const piece = (id: string) => {
  const found = session.arrangement().pieces.find((p) => p.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
};

describe('dragging a piece', () => {
  it('shows each frame as a preview and writes at most 20 times a second', () => {
    const written = vi.spyOn(session.commands, 'movePiece');
    const drag = movePieceDrag(model, piece('s1'), piece('s1'));
    for (let frame = 0; frame < 60; frame++) {
      drag.to({ x: 3000 - frame * 10, y: 1000 + frame * 10 }, held);
      vi.advanceTimersByTime(1000 / 60);
    }
    expect(session.previews).toHaveLength(60);
    expect(written.mock.calls.length).toBeLessThanOrEqual(20);
    drag.end();
    expect(piece('s1')).toMatchObject({ x: 2410, y: 1590 });
    expect(session.view().preview).toBeNull();
  });

  it('is one step to take back', () => {
    const drag = movePieceDrag(model, piece('s1'), piece('s1'));
    for (let frame = 0; frame < 10; frame++) {
      drag.to({ x: 3000, y: 1000 + frame * 10 }, held);
      vi.advanceTimersByTime(60);
    }
    drag.end();
    session.undo.takeBack();
    expect(piece('s1')).toMatchObject({ x: 3000, y: 160 });
    expect(session.undo.canTakeBack()).toBe(false);
  });

  it('leaves nothing behind when it is given up', () => {
    const drag = movePieceDrag(model, piece('s1'), piece('s1'));
    drag.to({ x: 3000, y: 2000 }, held);
    drag.cancel();
    expect(piece('s1')).toMatchObject({ x: 3000, y: 160 });
    expect(session.undo.canTakeBack()).toBe(false);
    expect(model.moving).toBeNull();
  });

  it('draws the resting things again at its start and end only', () => {
    const drag = movePieceDrag(model, piece('s1'), piece('s1'));
    for (let frame = 0; frame < 10; frame++) drag.to({ x: 3000, y: 1000 + frame * 10 }, held);
    drag.end();
    expect(drawn.filter((name) => name === 'things')).toHaveLength(2);
    expect(drawn).not.toContain('sheet');
  });

  it('takes the seats of a table along, turned with it', () => {
    const drag = movePieceDrag(model, piece('t1'), piece('t1'));
    drag.to({ x: 4000, y: 2000 }, held);
    drag.end();
    expect(piece('c1')).toMatchObject({ x: 4000, y: 2450 });
    const turned = carried({ x: 0, y: 450, rotation: 0 }, { x: 0, y: 0, rotation: 0 }, { x: 1000, y: 1000, rotation: 90 });
    expect(turned).toEqual({ x: 550, y: 1000, rotation: 90 });
  });
});

describe('handles', () => {
  it('makes a shelf longer at one end while the other stays', () => {
    const body = bodyOfPiece(piece('s1'));
    const handle = handlesOf(body, model.view).find((h) => h.what === 'right');
    if (!handle) throw new Error('no handle');
    const drag = handleDrag(model, body, handle, { x: 3600, y: 160 });
    drag?.to({ x: 3800, y: 500 }, held);
    drag?.end();
    expect(piece('s1')).toMatchObject({ width: 1400, x: 3100, y: 160, depth: 320 });
  });

  it('turns in steps of 15 degrees, or free', () => {
    const body = bodyOfPiece(piece('t1'));
    const handle = handlesOf(body, model.view).find((h) => h.what === 'turn');
    if (!handle) throw new Error('no handle');
    const grabbed = { x: 2000, y: 3600 };
    const drag = handleDrag(model, body, handle, grabbed);
    drag?.to({ x: 1380, y: 3000 }, held);
    drag?.end();
    expect(piece('t1').rotation).toBe(90);
    expect(piece('c1').rotation).toBe(90);
  });
});

describe('dragging the room', () => {
  it('slides a door along its wall and over to another', () => {
    const [door] = roomOf(model).openings;
    if (!door) throw new Error('no door');
    const drag = moveOpeningDrag(model, door, { x: 850, y: 0 });
    drag.to({ x: 2850, y: 100 }, held);
    expect(session.classroom().room.openings[0]?.offset).toBe(400);
    drag.end();
    expect(session.classroom().room.openings[0]).toMatchObject({ from: 'c1', offset: 2400 });
    const [moved] = roomOf(model).openings;
    if (!moved) throw new Error('no door');
    const over = moveOpeningDrag(model, moved, { x: 3000, y: 0 });
    over.to({ x: 5990, y: 2500 }, held);
    over.end();
    expect(session.classroom().room.openings[0]).toMatchObject({ from: 'c2', offset: 2050 });
  });

  it('moves a wall whole, the corner square with its neighbours', () => {
    const wall = roomOf(model).walls.find((w) => w.corner === 'c2');
    if (!wall) throw new Error('no wall');
    const drag = moveWallDrag(model, wall, { x: 6000, y: 2000 });
    drag.to({ x: 6504, y: 2100 }, held);
    drag.end();
    expect(session.classroom().room.corners.map((c) => c.x)).toEqual([0, 6500, 6500, 0]);
    session.undo.takeBack();
    expect(session.classroom().room.corners.map((c) => c.x)).toEqual([0, 6000, 6000, 0]);
    const corner = session.classroom().room.corners[2];
    if (!corner) throw new Error('no corner');
    const pull = moveCornerDrag(model, corner, corner);
    pull.to({ x: 6090, y: 4400 }, held);
    pull.end();
    expect(session.classroom().room.corners[2]).toMatchObject({ x: 6000, y: 4400 });
  });
});

describe('stepWriter', () => {
  it('takes nothing back when nothing was written', () => {
    session.commands.movePiece('a1', 's1', { x: 3000, y: 400 });
    stepWriter(model).cancel();
    expect(piece('s1').y).toBe(400);
  });
});

import { beforeEach, describe, expect, it } from 'vitest';
import type { Item } from '#client/plan/items.ts';
import { chooseSeveral, chooseUpTo, itemsChosen, toggleChosen } from '#client/plan/set/chosenSet.ts';
import { copySet, lockSet, mirrorSet, putAwaySet, rowSet, slideSet, spaceSet, turnSet } from '#client/plan/set/setVerbs.ts';
import { choose } from '#client/plan/verbs.ts';
import { type PlanSession, planSession } from '../planSession.ts';

const item = (id: string, kind: 'piece' | 'fixture' = 'piece'): Item => ({ kind, id });
let session: PlanSession;

beforeEach(() => {
  session = planSession({
    room: { fixtures: [{ id: 'f1', kind: 'sink', x: 5500, y: 4000, width: 600, depth: 500 }] },
    pieces: [
      { id: 's1', kind: 'shelf', x: 1000, y: 160, width: 1000, depth: 320, levels: [{ id: 'l1', surface: 640 }] },
      { id: 's2', kind: 'shelf', x: 2600, y: 300, width: 1000, depth: 320 },
      { id: 's3', kind: 'shelf', x: 4600, y: 160, width: 1000, depth: 320, locked: true },
      { id: 't1', kind: 'table', x: 2000, y: 3000, width: 1200, depth: 600, seatSides: { left: 1 } },
      { id: 'c1', kind: 'seat', x: 1200, y: 3000, width: 320, depth: 320, table: 't1' },
    ],
    placements: [{ material: 'm1', piece: 's1', level: 'l1', x: 0 }],
    materials: [{ id: 'm1', name: 'Number rods', area: 'mathematics' }],
  });
});
const at = (id: string) => session.arrangement().pieces.find((p) => p.id === id);
const last = () => session.said.at(-1);
const stepsBack = (): number => {
  let steps = 0;
  for (; session.undo.canTakeBack() && steps < 50; steps++) session.undo.takeBack();
  return steps;
};

describe('choosing several', () => {
  it('keeps the first for the others to go by, and says which', () => {
    chooseSeveral(session, [item('s1'), item('s2'), item('f1', 'fixture')]);
    expect(session.view()).toMatchObject({ chosen: item('s1'), alsoChosen: ['s2', 'f1'] });
    expect(last()).toBe('3 things: shelf 1, shelf 2 and sink.');
    expect(itemsChosen(session)).toEqual([item('s1'), item('s2'), item('f1', 'fixture')]);
  });

  it('adds one, leaves one out, and is over when one thing is chosen', () => {
    choose(session, item('s1'));
    toggleChosen(session, item('t1'));
    expect(last()).toBe('Table T1 is chosen; 2 chosen.');
    toggleChosen(session, item('s1'));
    expect(session.view()).toMatchObject({ chosen: item('t1'), alsoChosen: [] });
    toggleChosen(session, { kind: 'wall', id: 'c1' });
    expect(last()).toContain('is chosen alone');
    toggleChosen(session, item('s2'));
    choose(session, item('s1'));
    expect(session.view().alsoChosen).toEqual([]);
  });

  it('goes up to a line of the list', () => {
    choose(session, item('s3'));
    chooseUpTo(session, item('s1'));
    expect(itemsChosen(session).map(({ id }) => id)).toEqual(['s3', 's2', 's1']);
  });

  it('needs no chairs beside their table', () => {
    chooseSeveral(session, [item('t1'), item('c1'), item('s1')]);
    expect(itemsChosen(session).map(({ id }) => id)).toEqual(['t1', 's1']);
  });

  it('goes on with the next when the first is gone', () => {
    chooseSeveral(session, [item('s1'), item('s2'), item('t1')]);
    session.commands.putAwayPiece('a1', 's1');
    session.setView({});
    expect(session.view()).toMatchObject({ chosen: item('s2'), alsoChosen: ['t1'] });
  });
});

describe('moving several', () => {
  it('slides them alike, chairs with their table, the locked one staying, in one step', () => {
    expect(slideSet(session, [item('s2'), item('s3'), item('t1'), item('f1', 'fixture')], { x: 50, y: 100 })).toBe(true);
    expect([at('s2')?.x, at('s3')?.x, at('t1')?.y, at('c1')?.y]).toEqual([2650, 4600, 3100, 3100]);
    expect(session.classroom().room.fixtures[0]).toMatchObject({ x: 5550, y: 4100 });
    expect(last()).toBe('3 things slid 0.112 m. Shelf 3 is locked and stays.');
    expect(stepsBack()).toBe(1);
    expect([at('s2')?.x, at('t1')?.y, at('c1')?.y]).toEqual([2600, 3000, 3000]);
    expect(session.classroom().room.fixtures[0]).toMatchObject({ x: 5500, y: 4000 });
  });

  it('stops all where the first meets the wall', () => {
    slideSet(session, [item('s1'), item('t1')], { x: -5000, y: 0 });
    expect([at('s1')?.x, at('t1')?.x, at('c1')?.x]).toEqual([500, 1500, 700]);
    expect(slideSet(session, [item('s1'), item('t1')], { x: -50, y: 0 })).toBe(false);
    expect(last()).toBe('They stand against the wall.');
  });

  it('turns them about their middle', () => {
    session.commands.movePiece('a1', 's1', { x: 2000, y: 2000 });
    session.commands.movePiece('a1', 's2', { x: 3000, y: 2000 });
    turnSet(session, [item('s1'), item('s2')], 90);
    expect([at('s1'), at('s2')]).toMatchObject([
      { x: 2500, y: 1500, rotation: 90 },
      { x: 2500, y: 2500, rotation: 90 },
    ]);
  });

  it('says when all are locked', () => {
    lockSet(session, [item('s1'), item('s2')]);
    expect(last()).toContain('2 things locked');
    expect(slideSet(session, [item('s1'), item('s2')], { x: 0, y: 50 })).toBe(false);
    expect(last()).toBe('All of them are locked. Unlock them to move them.');
    lockSet(session, [item('s1'), item('s2')]);
    expect(at('s1')?.locked).toBe(false);
  });
});

describe('a mirror', () => {
  it('brings what is at the left of a table to its right, chairs and all, in one step', () => {
    mirrorSet(session, [item('s1'), item('t1')]);
    // From 0.50 to 2.60 m: the middle is at 1.55.
    expect([at('s1')?.x, at('t1')?.x, at('c1')?.x]).toEqual([2100, 1100, 1900]);
    expect(at('t1')?.seatSides).toEqual({ right: 1 });
    expect(session.arrangement().placements[0]).toMatchObject({ piece: 's1', side: 'front', x: 0 });
    expect(stepsBack()).toBe(1);
    expect(at('t1')).toMatchObject({ x: 2000, seatSides: { left: 1 } });
  });

  it('takes the trays of an open end along to the other end', () => {
    session.commands.changePiece('a1', 's1', { sides: ['left'] });
    session.commands.place('a1', { material: 'm1', piece: 's1', side: 'left', level: 'l1', x: 0, y: 0, turned: false });
    mirrorSet(session, [item('s1')]);
    expect(at('s1')?.sides).toEqual(['right']);
    expect(session.arrangement().placements[0]?.side).toBe('right');
  });
});

describe('rows and gaps', () => {
  it('stands shelves flush in the line of the first', () => {
    rowSet(session, [item('s1'), item('s2')]);
    expect(at('s2')).toMatchObject({ x: 2000, y: 160 });
    expect(last()).toBe('2 things in a row with shelf 1, 2.00 m long.');
    expect(stepsBack()).toBe(1);
  });

  it('says what it turned to lie as the first does', () => {
    session.commands.changePiece('a1', 's2', { rotation: 90 });
    rowSet(session, [item('s1'), item('s2')]);
    expect(at('s2')?.rotation).toBe(at('s1')?.rotation);
    expect(last()).toMatch(/^2 things in a row with shelf 1, 2\.00 m long\. Turned to lie as shelf 1 does: shelf 2\./);
  });

  it('keeps a gap between them when one is typed, and says so', () => {
    rowSet(session, [item('s1'), item('s2')], 300);
    expect(at('s2')).toMatchObject({ x: 2300, y: 160 });
    expect(last()).toBe('2 things in a row with shelf 1, 0.30 m between each and the next, 2.30 m long.');
  });

  it('says what now stands in the same place', () => {
    rowSet(session, [item('s1'), item('s2')], 2200);
    expect(at('s2')?.x).toBe(4200);
    expect(last()).toBe(
      '2 things in a row with shelf 1, 2.20 m between each and the next, 4.20 m long. In the same place now: shelf 2 and shelf 3.',
    );
  });

  it('goes by a locked first and leaves other locked ones, saying so', () => {
    rowSet(session, [item('s3'), item('s2')]);
    expect([at('s3')?.x, at('s2')?.x]).toEqual([4600, 3600]);
    rowSet(session, [item('s1'), item('s2'), item('s3')]);
    expect([at('s2')?.x, at('s3')?.x]).toEqual([2000, 4600]);
    expect(last()).toBe('2 things in a row with shelf 1, 2.00 m long. Shelf 3 is locked and stays.');
  });

  it('refuses a row longer than the room and moves nothing', () => {
    for (const id of ['s1', 's2']) session.commands.changePiece('a1', id, { width: 3500 });
    const before = session.arrangement();
    expect(rowSet(session, [item('s1'), item('s2')])).toBe(false);
    expect(last()).toBe('The row would be 7.00 m long and does not fit between the walls. Nothing was moved.');
    expect(session.arrangement()).toBe(before);
  });

  it('spaces evenly between ends, one of them locked', () => {
    spaceSet(session, [item('s1'), item('s2'), item('s3')]);
    expect([at('s1')?.x, at('s2')?.x, at('s3')?.x]).toEqual([1000, 2800, 4600]);
    expect(last()).toBe('3 things with 0.80 m between each and the next.');
  });

  it('says what two are too few for', () => {
    expect(spaceSet(session, [item('s1'), item('s2')])).toBe(false);
    expect(last()).toContain('three things or more');
  });
});

it('what belongs to the room cannot be locked, and says so', () => {
  lockSet(session, [item('f1', 'fixture')]);
  expect(last()).toBe('What belongs to the room cannot be locked.');
});

describe('away and again', () => {
  it('puts several away, trays on the table, chairs with their table, and brings all back in one step', () => {
    putAwaySet(session, [item('s1'), item('s3'), item('t1'), item('f1', 'fixture')]);
    expect(session.arrangement().pieces.map(({ id }) => id)).toEqual(['s2', 's3']);
    expect(session.classroom().room.fixtures).toEqual([]);
    expect(last()).toBe(
      '3 things and 1 chair put away; 1 tray is on the table. Take back brings all again while this page stays open. Shelf 3 is locked and stays.',
    );
    expect(stepsBack()).toBe(1);
    expect(session.arrangement().pieces).toHaveLength(5);
    expect(session.arrangement().placements[0]?.piece).toBe('s1');
    expect(session.classroom().room.fixtures).toHaveLength(1);
  });

  it('copies several with the chairs of a table, each with a number of its own, and chooses the copies', () => {
    copySet(session, [item('s1'), item('t1')]);
    const { pieces } = session.arrangement();
    const [shelf, table] = itemsChosen(session).map(({ id }) => pieces.find((p) => p.id === id));
    expect([shelf?.name, table?.name]).toEqual(['Shelf 4', 'Table 2']);
    const chair = pieces.find((p) => p.table === table?.id);
    expect(chair).toBeDefined();
    expect((chair?.x ?? 0) - (table?.x ?? 0)).toBe(-800);
    expect(stepsBack()).toBe(1);
    expect(session.arrangement().pieces).toHaveLength(5);
  });

  it('says what was copied: one by its name, several by their number', () => {
    copySet(session, [item('s1')]);
    expect(last()).toBe('The same again: Shelf 4. Empty; slide it to its place.');
    copySet(session, [item('s1'), item('s2')]);
    expect(last()).toBe('The same again: 2 things: shelf 5 and shelf 6. Empty; slide them to their place.');
  });

  it('copies a chair chosen before its table to the copy of the table', () => {
    copySet(session, [item('c1'), item('t1')]);
    const { pieces } = session.arrangement();
    const made = pieces.filter(({ id }) => !['s1', 's2', 's3', 't1', 'c1'].includes(id));
    const table = made.find(({ kind }) => kind === 'table');
    expect(made.map(({ kind, table: of }) => [kind, of])).toEqual(
      expect.arrayContaining([
        ['table', null],
        ['seat', table?.id],
      ]),
    );
    expect(made).toHaveLength(2);
  });
});

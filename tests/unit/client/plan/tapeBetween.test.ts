import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Item } from '#client/plan/items.ts';
import { layTapeEnd, layTapeOn } from '#client/plan/layTape.ts';
import { planStoreOf } from '#client/plan/planStore.ts';
import { edgeToEdge, sayEdgeToEdge, sayStraight, tapeThingAt, wayOfTape } from '#client/plan/tapeBetween.ts';
import { measureWay } from '#client/worker/wayDesk.ts';
import { type PlanSession, planSession } from './planSession.ts';

const piece = (id: string): Item => ({ kind: 'piece', id });
const wall = (id: string): Item => ({ kind: 'wall', id });
const ask = (question: Parameters<typeof measureWay>[0]) => Promise.resolve(measureWay(question));
let session: PlanSession;

beforeEach(() => {
  session = planSession({
    room: { openings: [] },
    pieces: [
      { id: 's1', kind: 'shelf', x: 1000, y: 2500, width: 1200, depth: 400 },
      { id: 's2', kind: 'shelf', x: 4000, y: 2500, width: 1200, depth: 400 },
      { id: 't1', kind: 'table', x: 3000, y: 4000, width: 1000, depth: 600, rotation: 45 },
    ],
  });
});

describe('from thing to thing', () => {
  it('is the shortest way from edge to edge', () => {
    expect(edgeToEdge(session, piece('s1'), piece('s2'))?.mm).toBeCloseTo(1800, 6);
    expect(sayEdgeToEdge(session, [piece('s1'), piece('s2')])).toBe('1.80 m from edge to edge, between shelf 1 and shelf 2');
    expect(edgeToEdge(session, piece('s1'), wall('c4'))?.mm).toBeCloseTo(400, 6);
    // A corner of the turned table: (500 + 300) / √2 over its middle.
    expect(edgeToEdge(session, piece('t1'), wall('c3'))?.mm).toBeCloseTo(1000 - 800 / Math.SQRT2, 6);
  });

  it('is nothing for a thing and itself, and 0 where two touch or overlap', () => {
    expect(edgeToEdge(session, piece('s1'), piece('s1'))).toBeNull();
    session.commands.movePiece('a1', 's2', { x: 2200, y: 2500 });
    expect(sayEdgeToEdge(session, [piece('s1'), piece('s2')])).toContain('touch');
    session.commands.changePiece('a1', 't1', { x: 1000, y: 2500, width: 200, depth: 200, rotation: 0 });
    expect(edgeToEdge(session, piece('s1'), piece('t1'))?.mm).toBe(0);
  });

  it('is told beside the straight line between the ends, unless that is the same line', () => {
    const ends = [
      { x: 1000, y: 2500 },
      { x: 4000, y: 2500 },
    ];
    expect(sayStraight(session, ends, [null, null])).toEqual(['3.00 m straight from end to end']);
    expect(sayStraight(session, ends, [piece('s1'), piece('s2')])).toEqual([
      '3.00 m straight from end to end',
      '1.80 m from edge to edge, between shelf 1 and shelf 2',
    ]);
    const near = ends.map(({ x, y }, i) => ({ x: x + (i === 0 ? 600 : -600), y }));
    expect(sayStraight(session, near, [piece('s1'), piece('s2')])).toEqual([
      '1.80 m straight from edge to edge, between shelf 1 and shelf 2',
    ]);
  });

  it('knows what a point lies on', () => {
    expect(tapeThingAt(session, { x: 1000, y: 2500 })).toEqual(piece('s1'));
    expect(tapeThingAt(session, { x: 1600, y: 2700 })).toEqual(piece('s1'));
    expect(tapeThingAt(session, { x: 0, y: 1000 })).toEqual(wall('c4'));
    expect(tapeThingAt(session, { x: 2500, y: 1000 })).toBeNull();
  });
});

describe('the way between two points', () => {
  const ends = [
    { x: 2500, y: 1000 },
    { x: 2500, y: 3000 },
  ];

  it('is as wide as its narrowest place, which is named', async () => {
    // Straight on between the shelves: from 1.60 to 3.40 m, with 0.70 m beside the table at the end.
    session.commands.movePiece('a1', 't1', { x: 5000, y: 4400 });
    const way = await wayOfTape(session, ends, [null, null], ask);
    expect(way.width).toBeCloseTo(1800, 3);
    expect(way.said).toBe('Walking from one end to the other, the narrowest place is 1.80 m wide: at C3, between shelf 1 and shelf 2.');
    expect(way.between).toHaveLength(2);
  });

  it('says when there is none, and where none can be told', async () => {
    session.commands.changePiece('a1', 's1', { x: 3000, width: 6000 });
    expect((await wayOfTape(session, ends, [null, null], ask)).said).toContain('Nobody can walk from one end to the other');
    expect((await wayOfTape(session, ends, [wall('c1'), null], ask)).said).toContain('can be told between floor, doors');
    const [, free = { x: 0, y: 0 }] = ends;
    expect((await wayOfTape(session, [{ x: 3000, y: 2500 }, free], [null, null], ask)).said).toContain('Press it on free floor');
  });
});

describe('laying the tape', () => {
  it('by things lies where they are nearest, and says all there is to say', async () => {
    layTapeOn(session, piece('s1'));
    expect(session.said.at(-1)).toBe('Tape from shelf 1. Press the other end.');
    layTapeOn(session, piece('s2'), ask);
    const { tape } = planStoreOf(session).state();
    expect(tape.map(({ x }) => x)).toEqual([1600, 3400]);
    await vi.waitFor(() => expect(planStoreOf(session).state().tapeWay).not.toBeNull(), 10_000);
    expect(session.said.at(-1)).toMatch(
      /^Tape: 1\.80 m straight from edge to edge, between shelf 1 and shelf 2\. Walking from one end to the other, /,
    );
  });

  it('drops what was looked for between other ends', async () => {
    layTapeEnd(session, { x: 2500, y: 1000 }, null);
    layTapeEnd(session, { x: 2500, y: 3000 }, null, ask);
    layTapeEnd(session, { x: 500, y: 500 }, null);
    await new Promise((done) => setTimeout(done, 300));
    expect(planStoreOf(session).state()).toMatchObject({ tape: [{ x: 500, y: 500 }], tapeWay: null });
  });

  it('comes off when a thing it lies on is moved or put away, and says so', () => {
    layTapeOn(session, piece('s1'));
    layTapeOn(session, piece('s2'), ask);
    session.commands.movePiece('a1', 's2', { x: 4200, y: 2500 });
    expect(planStoreOf(session).state()).toMatchObject({ tape: [], tapeOn: [], tapeEdge: null, tapeWay: null });
    expect(session.said.at(-1)).toBe('The tape lay on shelf 2, which is otherwise now. Lay the tape again.');
    layTapeOn(session, piece('s1'));
    session.commands.putAwayPiece('a1', 's1');
    expect(planStoreOf(session).state().tape).toEqual([]);
    expect(session.said.at(-1)).toBe('What the tape lay on is gone. Lay the tape again.');
  });

  it('stays when something else is moved, and only the way is looked for again', async () => {
    layTapeOn(session, piece('s1'));
    layTapeOn(session, piece('s2'), ask);
    await vi.waitFor(() => expect(planStoreOf(session).state().tapeWay).not.toBeNull(), 10_000);
    const { tape, tapeEdge } = planStoreOf(session).state();
    session.commands.movePiece('a1', 't1', { x: 3000, y: 4200 });
    expect(planStoreOf(session).state()).toMatchObject({ tape, tapeEdge, tapeWay: null });
    // There are no workers here, which is told in the way's place.
    await vi.waitFor(() => expect(planStoreOf(session).state().tapeWay?.said).toContain('could not be worked out'), 10_000);
  });
});

import { describe, expect, it } from 'vitest';
import { type Mend, mendWays, mendWaysNow } from '#model/analysis/mendWays/mendWays.ts';
import { sayMend, sayMove } from '#model/analysis/mendWays/sayMend.ts';
import { analyse } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Finding } from '#model/findings/finding.ts';
import { measureWaysAndNarrow } from '#model/measures/waysMeasure.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];

/** Before the shelf two boxes stand across the room, `gap` mm apart; each ends `slack` mm before its wall. */
const screen = (gap: number, slack: number, depth: number, change: Partial<Piece> = {}): PlainRoomChange => ({
  pieces: [
    { id: 'left', kind: 'other', x: slack + (3000 - gap / 2 - slack) / 2, y: 2000, width: 3000 - gap / 2 - slack, depth, height: 900 },
    { id: 'right', kind: 'other', x: 3000 + gap / 2 + (3000 - gap / 2) / 2, y: 2000, width: 3000 - gap / 2, depth, height: 900, ...change },
    { id: 's1', kind: 'shelf', x: 3000, y: 4840, rotation: 180, width: 1200, depth: 320, height: 700, anchored: true, locked: true },
  ],
});

const found = (mend: Mend) => {
  if (mend.end !== 'found') throw new Error(`nothing was found: ${JSON.stringify(mend)}`);
  return mend;
};
const musts = (classroom: Classroom) =>
  new Set(
    analyse(classroom)
      .findings.filter((f) => f.severity === 'must')
      .map((f) => f.key),
  );

/** The room that most is asked of, and its mend, looked for once. */
const staggered = plainRoom(screen(600, 500, 700));
let mended: Mend | null = null;
const mendOfStaggered = (): Mend => {
  mended ??= mendWaysNow(staggered);
  return mended;
};

describe('a mend of the ways', () => {
  it('moves a box just so far that a long gap is as wide as a route, by hand: 914.4 - 600 = 314.4, in whole mm 315', () => {
    // 1500 mm deep: longer than the exception of 403.5.1 allows (610 mm), so 36 in are asked (A01, A02).
    const mend = found(mendWaysNow(plainRoom(screen(600, 500, 1500))));
    expect(mend.moves.map(({ piece, by }) => [piece, by])).toEqual([['left', 315]]);
    expect(mend.total).toBe(315);
    expect(mend.edits).toEqual([{ do: 'move-piece', piece: 'left', x: 1285, y: 2000 }]);
  });

  it('makes a way only as wide as it must be, where that is asked for: 711 - 600 = 111, and says what is left', () => {
    const room = plainRoom(screen(600, 500, 1500));
    const mend = found(mendWaysNow(room, { only: 'must' }));
    expect(mend).toMatchObject({ total: 111, least: 711, moves: [{ piece: 'left', by: 111 }] });
    expect(sayMend(buildScene(room), mend)).toMatch(/^Move one piece, 0\.111 m in all, and every way is as wide as it must be, 0\.711 m\./);
    // Where a route is required every shortfall is a must, and there is nothing less to ask for.
    const required = { ...room, access: { ...room.access, required: true } };
    expect(found(mendWaysNow(required, { only: 'must' })).total).toBe(315);
  });

  it('widens a short gap only to 32 in, which the exception allows: 812.8 - 600 = 212.8, in whole mm 213', () => {
    expect(found(mendWaysNow(plainRoom(screen(600, 500, 200)))).total).toBe(213);
  });

  it('staggers two boxes 700 mm deep by 90, so that 610 of the gap are left and 32 in will do: the root of 213² + 90²', () => {
    expect(found(mendOfStaggered()).total).toBeCloseTo(Math.hypot(213, 90), 9);
  });

  it('moves one where any share between two is as good, and two where neither has the room alone', () => {
    const room = screen(700, 100, 1500);
    const [left, right, shelf] = room.pieces ?? [];
    if (!left || !right || !shelf) throw new Error('the room has three pieces');
    const shorter = (by: number): Piece => ({ ...right, width: right.width - by, x: right.x - by / 2 });
    // 914.4 - 700 = 214.4 in all.
    const one = found(mendWaysNow(plainRoom({ pieces: [left, shorter(400), shelf] })));
    expect(one.moves.map(({ piece, by }) => [piece, by])).toEqual([['right', 215]]);
    const both = found(mendWaysNow(plainRoom({ pieces: [left, shorter(150), shelf] })));
    expect(both.moves.map(({ piece }) => piece).sort()).toEqual(['left', 'right']);
    expect(both.total).toBe(215);
  });

  it('leaves what is locked, or asked to stay, where it is', () => {
    const room = screen(600, 500, 700);
    expect(mendWaysNow(plainRoom({ ...room, pieces: (room.pieces ?? []).map((piece) => ({ ...piece, locked: true })) }))).toEqual({
      end: 'nothing-free',
    });
    const kept = mendWaysNow(plainRoom(room), { keep: ['left'] });
    // The other box stands at its wall on both sides: no move of it widens the gap by enough.
    if (kept.end === 'found') expect(kept.moves.map(({ piece }) => piece)).not.toContain('left');
    else expect(['all', 'apart']).toContain(kept.end);
  });

  it('says what no move widens', () => {
    const room = plainRoom({
      ...screen(600, 500, 700),
      room: { fixtures: [{ id: 'wall2', kind: 'partition', x: 3000, y: 3500, width: 5000, depth: 100 }] },
    });
    const mend = mendWaysNow(room);
    expect(mend).toMatchObject({ end: 'fixed', held: [{ label: 'shelf s1', width: 500 }] });
    expect(sayMend(buildScene(room), mend)).toMatch(
      /^Nothing was found: with all that may be moved out of the room, the way to shelf s1 stays 0\.50 m wide between .*wall/,
    );
  });

  it('says so where every way is wide enough, or the ways are not known', () => {
    expect(mendWaysNow(plainRoom(screen(1000, 0, 700)))).toEqual({ end: 'fine' });
    expect(mendWaysNow(plainRoom({ ...screen(600, 500, 700), room: { openings: [] } }))).toEqual({
      end: 'cannot-tell',
      missing: 'where the doors and passages are',
    });
  });

  it('counts what would have to move where that is more than it may', () => {
    const [left, right, shelf] = screen(600, 500, 200).pieces ?? [];
    if (!left || !right || !shelf) throw new Error('the room has three pieces');
    const second = [left, right].map((piece) => ({ ...piece, id: `${piece.id}2`, y: 3500 }));
    const room = plainRoom({ pieces: [left, right, ...second, shelf] });
    const apart = mendWaysNow(room, { most: 1 });
    expect(apart).toMatchObject({ end: 'apart', pieces: 2, most: 1 });
    expect(sayMend(buildScene(room), apart)).toMatch(
      /^Nothing was found: at least 2 pieces would have to move, (?:one for each of|for) the ways? to /,
    );
    expect(found(mendWaysNow(room, { most: 2 })).total).toBe(2 * 213);
  });

  it('says what is new below must, and what stays narrow because nobody has to go through', () => {
    const room = staggered;
    const mend = found(mendOfStaggered());
    expect(sayMend(buildScene(room), { ...mend, brings: [], stays: [] })).toMatch(
      / and every way is wide enough\. No new must comes with it\.$/,
    );
    const [any] = analyse(room).findings;
    if (!any) throw new Error('something is wrong in this room');
    const half: Finding = { ...any, key: 'half', rule: 'reach/front', severity: 'should', message: 'Only 38 % of it can be come up to.' };
    const gap: Finding = {
      ...any,
      key: 'gap',
      rule: 'way/narrow',
      severity: 'note',
      subjects: ['left', 'right'],
      measured: { value: 310, unit: 'mm' },
    };
    const old: Finding = { ...gap, key: 'old', subjects: ['right', 's1'], measured: { value: 450, unit: 'mm' } };
    // Two are new, and both are counted; what stays so is not new.
    expect(sayMend(buildScene(room), { ...mend, brings: [half, gap], stays: [gap, old] })).toMatch(
      / and there is a way wide enough to everything\. No new must comes with it, but 1 new should and 1 new note do: Only 38 % of it can be come up to\. It is narrow then where nobody has to go through: between thing left and thing right \(0\.31 m\)\. It stays narrow where nobody has to go through: between thing right and shelf s1 \(0\.45 m\)\.$/,
    );
    const note: Finding = { ...half, key: 'note', severity: 'note', message: 'An adult does not fit in.' };
    expect(sayMend(buildScene(room), { ...mend, brings: [note, gap], stays: [gap] })).toContain(
      'but 2 new notes do: An adult does not fit in. ',
    );
  });

  it('widens only the narrowest place when asked to, and makes no other way worse', () => {
    // The way to the sink cannot be widened: what stands before it is locked.
    const boxes = [400, 1600].map(
      (y, i): Piece => ({ id: `box${i}`, kind: 'other', x: 4475, y, width: 700, depth: 1200, height: 900, locked: true }),
    );
    const sink = { id: 'sink', kind: 'sink', x: 5700, y: 1000, width: 600, depth: 450, rotation: 90 } as const;
    const room = plainRoom({ pieces: [...(screen(600, 500, 200).pieces ?? []), ...boxes], room: { fixtures: [sink] } });
    const whole = mendWaysNow(room);
    expect(whole.end).toBe('fixed');
    const mend = found(mendWaysNow(room, { only: 'narrowest' }));
    expect(mend).toMatchObject({ place: { width: 600 }, total: 213 });
    expect(sayMend(buildScene(room), mend)).toMatch(
      / and it is wide enough between thing left and thing right; no other way gets narrower\./,
    );
    const waysOf = (classroom: Classroom) => new Map(measureWaysAndNarrow(buildScene(classroom)).ways.map((way) => [way.to, way.judged]));
    const [was, is] = [waysOf(room), waysOf(applyEdits(room, 'a1', mend.edits))];
    expect(is.get('s1')).toBeGreaterThanOrEqual(914.4);
    expect(is.get('sink')).toBeGreaterThanOrEqual((was.get('sink') ?? 0) - 0.01);
    expect(was.get('sink')).toBeLessThan(914);
  });

  it('widens the narrowest place only as far as the rest of the way allows: from 600 to the 700 of the next', () => {
    const second = (screen(700, 0, 200).pieces ?? [])
      .slice(0, 2)
      .map((piece): Piece => ({ ...piece, id: `${piece.id}2`, y: 3500, locked: true }));
    const room = plainRoom({ pieces: [...(screen(600, 500, 200).pieces ?? []), ...second] });
    expect(mendWaysNow(room).end).toBe('fixed');
    const open = plainRoom({ pieces: [...(screen(600, 500, 200).pieces ?? []), ...second.map((piece) => ({ ...piece, locked: false }))] });
    const mend = found(mendWaysNow(open, { only: 'narrowest', keep: ['right'] }));
    expect(mend).toMatchObject({ place: { width: 600, enough: 700 }, total: 100, moves: [{ piece: 'left' }] });
    expect(sayMend(buildScene(open), mend)).toContain(
      'it no longer holds anybody back between thing left and thing right: those ways are 0.70 m wide then',
    );
  });

  it('need not widen a way that was left as it is', () => {
    const room = plainRoom(screen(600, 500, 700));
    const left = analyse(room)
      .findings.filter((f) => f.rule.startsWith('way/'))
      .map(({ key }) => ({ key, reason: 'for today', by: 'MK', at: '2026-11-25' }));
    expect(mendWaysNow({ ...room, left })).toEqual({ end: 'fine' });
  });

  it('moves a table with its chairs, and says so', () => {
    const room = plainRoom({
      pieces: [
        { id: 't1', kind: 'table', name: 'table 1', x: 2700, y: 2500, width: 3900, depth: 700, height: 530 },
        { id: 'chair', kind: 'seat', x: 2700, y: 2500, width: 300, depth: 300, height: 300, table: 't1' },
        { id: 'box', kind: 'other', x: 5650, y: 2500, width: 700, depth: 700, height: 900, locked: true },
        { id: 's1', kind: 'shelf', x: 3000, y: 4840, rotation: 180, width: 1200, depth: 320, height: 700, locked: true },
      ],
    });
    const mend = mendWaysNow(room);
    const { moves, edits } = found(mend);
    expect(moves).toMatchObject([{ piece: 't1', chairs: 1 }]);
    expect(edits.map((edit) => edit.do === 'move-piece' && edit.piece)).toEqual(['t1', 'chair']);
    const [move] = moves;
    expect(move && sayMove(buildScene(room), move)).toMatch(/^Table 1 with its chair: 0\.\d+ m towards the (north|south|east|west) wall$/);
  });

  describe('beside seats', () => {
    // 483 mm are kept: the 19 in that loose seating beside a table takes, International Building Code 1018.2 (row B11).
    const door = { id: 'd1', kind: 'door', from: 'c1', offset: 3500, width: 900, clear: 850, swing: 'out-left', exit: true } as const;
    const block = (id: string, x0: number, x1: number, y: number, depth: number, change: Partial<Piece> = {}): Piece => ({
      ...{ id, kind: 'other', x: (x0 + x1) / 2, y, width: x1 - x0, depth, height: 900, locked: true },
      ...change,
    });
    const shelf: Piece = { id: 's1', kind: 'shelf', x: 3000, y: 4840, rotation: 180, width: 1200, depth: 320, height: 700, locked: true };
    const right = block('right', 3300, 6000, 2000, 1500);
    const free = { locked: false } as const;
    const seated = (seatSides: Piece['seatSides']): Partial<Piece> => ({ kind: 'table', height: 530, seatSides });
    const mendOf = (...pieces: Piece[]): Mend => mendWaysNow(plainRoom({ room: { openings: [door] }, pieces: [...pieces, right, shelf] }));

    // The gap of 600 would be 915 wide with the left one 315 to the west: 500 - 315 = 185 mm would be left of the floor there.
    it('no thing comes to stand on the floor behind them', () => {
      const table = block('t1', 0, 300, 900, 1400, seated({ right: 2 }));
      expect(mendOf(block('left', 800, 2700, 2000, 1500, free), table).end).toBe('all');
      // 900 - 315 = 585 are left from there.
      const farther = mendOf(block('left', 800, 2700, 2000, 1500, free), { ...table, width: 100, x: 50, depth: 900, y: 650 });
      expect(found(farther).edits).toEqual([{ do: 'move-piece', piece: 'left', x: 1435, y: 2000 }]);
    });

    it('no table brings that floor to where a thing stands', () => {
      const table = (seatSides: Piece['seatSides']): Piece => block('left', 800, 2700, 2000, 1500, { ...free, ...seated(seatSides) });
      const thing = block('thing', 0, 300, 2000, 700);
      expect(found(mendOf(table({}), thing)).edits).toEqual([{ do: 'move-piece', piece: 'left', x: 1435, y: 2000 }]);
      const said = mendOf(table({ left: 2 }), thing);
      expect(said.end).toBe('all');
      // Looked for in two ways, one after the other: how far it is never goes back.
      const totals = [...mendWays(plainRoom({ room: { openings: [door] }, pieces: [table({ left: 2 }), thing, right, shelf] }))].map(
        ({ total }) => total,
      );
      expect(totals.at(-1)).toBeGreaterThan(100);
      expect(totals).toEqual([...totals].sort((p, q) => p - q));
      expect(sayMend(buildScene(staggered), said)).toContain('; the floor behind seats stays free.');
    });

    it('a thing that stands on it already may move along it', () => {
      // It ends 83 mm within the floor behind the table's north edge.
      const table = block('t1', 0, 1200, 3500, 700, seated({ back: 2 }));
      const { moves } = found(mendOf(block('left', 500, 2700, 2000, 1500, free), table));
      expect(moves).toMatchObject([{ piece: 'left', from: { x: 1600, y: 2000 }, to: { x: 1285 } }]);
      expect(moves[0]?.to.y).toBeLessThanOrEqual(2000);
    });
  });

  it('is the same each time, in slices that can be left off', () => {
    const room = plainRoom(screen(600, 500, 700));
    const whole = mendOfStaggered();
    const work = mendWays(room);
    let slices = 0;
    let least = Infinity;
    let step = work.next();
    for (; !step.done; step = work.next()) {
      expect(step.value.looks).toBeGreaterThanOrEqual(slices === 0 ? 0 : 1);
      // What is found is told before it is made shorter, and never a worse one after it.
      const { best } = step.value;
      if (best) expect(best.total).toBeLessThanOrEqual(least);
      least = best?.total ?? least;
      slices++;
    }
    expect(step.value).toEqual(whole);
    expect(slices).toBeGreaterThan(5);
    expect(least).toBeGreaterThanOrEqual(found(whole).total);
    expect(mendWays(room).next().done).toBe(false);
  });

  it('brings no must', () => {
    const room = staggered;
    const after = applyEdits(room, 'a1', found(mendOfStaggered()).edits);
    const before = musts(room);
    expect([...musts(after)].filter((key) => !before.has(key))).toEqual([]);
    expect(analyse(after).answers['way/width']).not.toBe('problem');
  });
});

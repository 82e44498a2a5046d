import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeBetween, withChange } from '#client/worker/classroomChange.ts';
import type { Classroom, Piece } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom({
  pieces: [
    { id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1200, depth: 320 },
    { id: 's2', kind: 'shelf', x: 3000, y: 1000, width: 1200, depth: 320 },
  ],
});

const withPieces = (classroom: Classroom, change: (pieces: readonly Piece[]) => Piece[]): Classroom => ({
  ...classroom,
  arrangements: classroom.arrangements.map((a) => ({ ...a, pieces: change(a.pieces) })),
});

describe('what is sent to the worker', () => {
  it('is one piece when one piece moved', () => {
    const after = withPieces(room, (pieces) => pieces.map((p) => (p.id === 's1' ? { ...p, x: 1500 } : p)));
    const change = changeBetween(room, after);
    expect(change.set).toEqual({});
    expect(change.arrangements?.inside[0]?.lists.pieces?.changed.map((p) => p.id)).toEqual(['s1']);
    expect(withChange(room, change)).toEqual(after);
  });

  it('is nothing when nothing changed', () => {
    const change = changeBetween(room, room);
    expect(change).toEqual({ set: {}, removed: [], lists: {}, arrangements: null });
    expect(withChange(room, change)).toEqual(room);
  });

  it('keeps the identity of what did not change', () => {
    const after = { ...room, name: 'Another name' };
    const copy = withChange(room, changeBetween(room, after));
    expect(copy.name).toBe('Another name');
    expect(copy.arrangements).toBe(room.arrangements);
  });

  it('takes keys away, pieces away, and new arrangements in', () => {
    const before = { ...room, ours: 1 } as Classroom;
    const first = room.arrangements[0];
    if (!first) throw new Error('the plain room has an arrangement');
    const after: Classroom = {
      ...room,
      arrangements: [
        { ...first, id: 'a2', name: 'Other' },
        { ...first, pieces: first.pieces.slice(1) },
      ],
    };
    expect(withChange(before, changeBetween(before, after))).toEqual(after);
  });

  it('always gives the later classroom, whatever was done to the pieces', () => {
    const seed = Number(process.env.SEED ?? 20261125);
    const move = fc.record({
      what: fc.constantFrom('move', 'add', 'drop', 'turn round'),
      at: fc.nat(5),
      x: fc.integer({ min: 0, max: 6000 }),
    });
    fc.assert(
      fc.property(fc.array(move, { maxLength: 12 }), (moves) => {
        let now = room;
        let copy = room;
        for (const { what, at, x } of moves) {
          const next = withPieces(now, (pieces) => {
            const list = [...pieces];
            const target = list[at % Math.max(1, list.length)];
            const first = room.arrangements[0]?.pieces[0];
            if (what === 'add' && first) return [...list, { ...first, id: `n${x}-${list.length}`, x }];
            if (what === 'turn round') return list.reverse();
            if (!target) return list;
            if (what === 'drop') return list.filter((p) => p !== target);
            return list.map((p) => (p === target ? { ...p, x } : p));
          });
          copy = withChange(copy, changeBetween(now, next));
          now = next;
          expect(copy).toEqual(now);
        }
      }),
      { seed, numRuns: 60 },
    );
  });
});

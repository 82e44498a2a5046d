import { describe, expect, it } from 'vitest';
import { pairPieces, pieceChanges } from '#model/analysis/moveDay/differences.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const shelf = (id: string, x: number, more: Partial<MovePiece> = {}): MovePiece => ({
  id,
  kind: 'shelf',
  x,
  y: 1000,
  width: 1000,
  depth: 400,
  ...more,
});

function changes(before: MovePiece[], after: MovePiece[]) {
  const [a, b] = moveRoom(before, after).arrangements;
  if (!a || !b) throw new Error('two arrangements');
  return { all: pieceChanges(a, b), pairs: pairPieces(a.pieces, b.pieces) };
}

describe('what differs between two arrangements', () => {
  it('nothing, when nothing was changed', () => {
    expect(changes([shelf('s1', 1000)], [shelf('s1', 1000)]).all).toEqual([]);
  });

  it('moved, turned by the shorter way, exchanged, with other boards', () => {
    const { all } = changes(
      [shelf('s1', 1000, { rotation: 350 }), shelf('s2', 2500), shelf('s3', 4000, { levels: [{ id: 'l1', surface: 600 }] })],
      [
        shelf('s1', 1300, { y: 1400, rotation: 10 }),
        shelf('s2', 2500, { width: 900 }),
        shelf('s3', 4000, { levels: [{ id: 'l1', surface: 500 }] }),
      ],
    );
    expect(all.map(({ id, by, turned, isExchanged, hasOtherBoards }) => [id, by, turned, isExchanged, hasOtherBoards])).toEqual([
      ['s1', 500, 20, false, false],
      ['s2', 0, 0, true, false],
      ['s3', 0, 0, false, true],
    ]);
  });

  it('put away and new', () => {
    const { all } = changes([shelf('s1', 1000, { name: 'one' })], [shelf('s2', 3000, { name: 'two' })]);
    expect(all.map(({ id, before, after }) => [id, before?.id ?? null, after?.id ?? null])).toEqual([
      ['s1', 's1', null],
      ['s2', null, 's2'],
    ]);
  });

  it('pieces of other ids are the same when they are the same thing, the nearest first; one of another kind never is', () => {
    const { pairs } = changes(
      [shelf('a', 1000), shelf('b', 3000), shelf('c', 5000)],
      [shelf('x', 3100), shelf('y', 1100), { id: 'c', kind: 'table', x: 5000, y: 1000, width: 1000, depth: 400 }],
    );
    expect(pairs.map(({ before, after }) => `${before?.id ?? '-'}>${after?.id ?? '-'}`)).toEqual(['a>y', 'b>x', 'c>-', '->c']);
  });
});

import { describe, expect, it } from 'vitest';
import { edgeOf, initialsOf, nobody, readPresence } from '#model/document/presence.ts';

describe('presence', () => {
  it('reads what people publish, in a steady order, and marks oneself', () => {
    const preview = { piece: 's1', x: 1, y: 2, rotation: 0 };
    const states = new Map<number, unknown>([
      [9, { ...nobody, name: 'Ida Brook', initials: 'IB', edge: 'dashed', sheet: 'places', arrangement: 'a1', holds: 's1', preview }],
      [3, { name: 'Tam' }],
    ]);
    expect(readPresence(states, 9)).toEqual([
      { ...nobody, name: 'Tam', clientId: 3, isMe: false },
      {
        clientId: 9,
        isMe: true,
        name: 'Ida Brook',
        initials: 'IB',
        edge: 'dashed',
        sheet: 'places',
        arrangement: 'a1',
        holds: 's1',
        preview,
      },
    ]);
  });

  it('takes a state that does not parse for nobody', () => {
    const states = new Map<number, unknown>([
      [1, null],
      [2, 'somebody'],
      [3, { name: 'x'.repeat(5000) }],
      [4, { name: 'ok', preview: { piece: 's1', x: Number.NaN, y: 0, rotation: 0 } }],
      [5, { name: 'ok', holds: '__proto__' }],
      [6, { name: 'fine', more: 'than asked' }],
    ]);
    expect(readPresence(states, 0).map(({ clientId }) => clientId)).toEqual([6]);
    expect(readPresence(states, 0)[0]).not.toHaveProperty('more');
  });

  it('makes initials of the first and last word', () => {
    expect(['Ida Brook', 'tam', ' Ana de la Cruz ', '', '李 明'].map(initialsOf)).toEqual(['IB', 'T', 'AC', '', '李明']);
  });

  it('gives three people three edges', () => {
    expect(new Set([1, 2, 3].map(edgeOf)).size).toBe(3);
  });
});

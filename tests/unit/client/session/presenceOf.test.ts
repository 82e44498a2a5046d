import { describe, expect, it } from 'vitest';
import { heldIn, personOf } from '#client/session/presenceOf.ts';
import { nobody } from '#model/document/presence.ts';

const preview = { piece: 's1', x: 0, y: 0, rotation: 0 };

describe('what colleagues see held', () => {
  it.each([
    [{ preview, chosen: { kind: 'piece', id: 's2' } }, 's1'],
    [{ preview: null, chosen: { kind: 'piece', id: 's2' } }, 's2'],
    [{ preview: null, chosen: { kind: 'tray', id: 'm1' } }, 'm1'],
    [{ preview: null, chosen: { kind: 'opening', id: 'd1' } }, 'd1'],
    [{ preview: null, chosen: { kind: 'wall', id: 'wall:c1' } }, null],
    [{ preview: null, chosen: { kind: 'corner', id: 'c1' } }, null],
    [{ preview: null, chosen: null }, null],
  ] as const)('%#: %o', (view, id) => {
    expect(heldIn(view)).toBe(id);
  });
});

describe('who a colleague is', () => {
  const here = { ...nobody, clientId: 7, isMe: false };

  it('is somebody while no name was given', () => {
    expect(personOf(here).initials).toBe('somebody');
    expect(personOf({ ...here, name: 'Ida Brook' }).initials).toBe('IB');
    expect(personOf({ ...here, name: 'Ida Brook', initials: 'I' }).initials).toBe('I');
  });

  it('holds things only in the arrangement that is looked at', () => {
    const busy = { ...here, arrangement: 'a2', holds: 's1', preview };
    expect(personOf(busy, 'a2')).toMatchObject({ elsewhere: null, holds: 's1', preview });
    expect(personOf(busy, 'a1')).toMatchObject({ elsewhere: 'a2', holds: null, preview: null });
    // A page that does not say where it is.
    expect(personOf({ ...busy, arrangement: null }, 'a1')).toMatchObject({ elsewhere: null, holds: 's1' });
  });

  it('says nothing of myself that I have not said', () => {
    expect(personOf({ ...here, isMe: true }).initials).toBe('');
  });
});

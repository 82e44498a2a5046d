import { describe, expect, it } from 'vitest';
import { putAmong, type Standing, slideApart, withTray } from '#client/front/makeRoom.ts';

const tray = (id: string, x: number, width: number): Standing => ({ id, x, width });
const whereAll = (trays: readonly Standing[], places: ReadonlyMap<string, number>): Standing[] =>
  trays.map((each) => ({ ...each, x: places.get(each.id) ?? each.x }));

describe('making room on a board', () => {
  it('moves nobody who stands free', () => {
    const made = slideApart([tray('a', 0, 300), tray('b', 350, 300)], 1000, 50);
    expect(made).toEqual({ fits: true, places: new Map() });
  });

  it('slides the later ones along, and no further than the gap asks', () => {
    const made = putAmong([tray('a', 0, 300), tray('b', 300, 300)], tray('new', 290, 200), 1000, 50);
    expect(made.fits && Object.fromEntries(made.places)).toEqual({ new: 350, b: 600 });
  });

  it('pushes back from the end of the board when there is no room to the right', () => {
    const made = putAmong([tray('a', 0, 300), tray('b', 400, 300)], tray('new', 900, 200), 1000, 50);
    expect(made.fits && Object.fromEntries(made.places)).toEqual({ new: 800 });
    const tight = putAmong([tray('a', 300, 300), tray('b', 650, 300)], tray('new', 980, 200), 1000, 50);
    expect(tight.fits && Object.fromEntries(tight.places)).toEqual({ a: 100, b: 450, new: 800 });
  });

  it('leaves trays that stand flush as close as they are', () => {
    const made = putAmong([tray('a', 0, 300), tray('b', 300, 300)], tray('new', 700, 200), 1000, 50);
    expect(made.fits && Object.fromEntries(made.places)).toEqual({ new: 700 });
  });

  it('shrinks the gaps before it refuses', () => {
    const made = putAmong([tray('a', 0, 300), tray('b', 350, 300)], tray('new', 800, 380), 1000, 50);
    expect(made.fits).toBe(true);
    const after = made.fits ? whereAll([tray('a', 0, 300), tray('b', 350, 300), tray('new', 0, 380)], made.places) : [];
    for (let i = 1; i < after.length; i++) {
      const left = after[i - 1] as Standing;
      expect((after[i] as Standing).x).toBeGreaterThanOrEqual(left.x + left.width - 1e-9);
    }
    expect((after[2] as Standing).x + 380).toBeLessThanOrEqual(1000 + 1e-9);
  });

  it('says by how much the board is too short', () => {
    expect(putAmong([tray('a', 0, 600)], tray('new', 0, 480), 1000, 50)).toEqual({ fits: false, shortBy: 80 });
  });

  it('puts a tray by the middles, whatever it overlaps', () => {
    const order = withTray([tray('a', 0, 300), tray('b', 400, 300)], tray('new', 160, 200)).map(({ id }) => id);
    expect(order).toEqual(['a', 'new', 'b']);
  });
});

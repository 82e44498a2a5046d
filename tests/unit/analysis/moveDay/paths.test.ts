import { describe, expect, it } from 'vitest';
import { pathOf, standsBy } from '#model/analysis/moveDay/paths.ts';
import { buildScene } from '#model/scene/build.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const shelf = (id: string, x: number, y: number, rotation = 0): MovePiece => ({
  id,
  kind: 'shelf',
  x,
  y,
  rotation,
  width: 1000,
  depth: 400,
});

function setting(from: MovePiece, to: MovePiece, others: readonly MovePiece[], more: Parameters<typeof moveRoom>[2] = {}) {
  const classroom = moveRoom([from, ...others], [to], more);
  const { bodies, room } = buildScene(classroom, 'a1');
  const [start, ...standing] = bodies;
  const [end] = buildScene(classroom, 'a2').bodies;
  if (!start || !end) throw new Error('a piece to move');
  return { start, end, standing, room };
}

// A room of 6 x 5 m, worked by hand.
describe('the path of a piece', () => {
  const path = (from: MovePiece, to: MovePiece, others: readonly MovePiece[] = []) => {
    const { start, end, standing, room } = setting(from, to, others);
    return pathOf(start, end, standing, room);
  };

  it('straight where nothing stands in the strip it sweeps', () => {
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 1000, 3000))).toEqual({ how: 'slide', legs: [{ x: 0, y: 2000 }] });
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 2000, 3000))).toEqual({ how: 'slide', legs: [{ x: 1000, y: 2000 }] });
  });

  it('touching on the way is no hindrance, a millimetre and a half is', () => {
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 1000, 3000), [shelf('s2', 2000, 2000)]).how).toBe('slide');
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 1000, 3000), [shelf('s2', 1998.5, 2000)]).how).toBe('carry');
  });

  it('round one corner where the straight strip is taken', () => {
    // In the middle of the slant; along first and then down is free.
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 3500, 4000), [shelf('s2', 1900, 2500)])).toEqual({
      how: 'slide',
      legs: [
        { x: 2500, y: 0 },
        { x: 0, y: 3000 },
      ],
    });
  });

  it('carried where both ways are taken, and where it is turned; turned where it stands on its spot', () => {
    expect(
      path(shelf('s1', 1000, 1000), shelf('s1', 3500, 4000), [shelf('s2', 1900, 2500), shelf('s3', 3500, 2500), shelf('s4', 1000, 3000)]),
    ).toEqual({
      how: 'carry',
      by: { x: 2500, y: 3000 },
    });
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 3000, 1000, 90)).how).toBe('carry');
    expect(path(shelf('s1', 1000, 1000), shelf('s1', 1000, 1050, 90)).how).toBe('turn');
  });
});

describe('what it comes to stand by', () => {
  const by = (to: MovePiece, others: readonly MovePiece[], ahead: { x: number; y: number } | null) => {
    const { end, standing, room } = setting(shelf('s1', 3000, 2500), to, others);
    return standsBy(end, standing, room, ahead);
  };

  it('ahead of a slide: the wall, or the piece before it', () => {
    expect(by(shelf('s1', 3000, 300), [], { x: 0, y: -1 })).toEqual({ kind: 'wall', id: 'wall:c1', gap: 100 });
    expect(by(shelf('s1', 3000, 1000), [shelf('s2', 3000, 500)], { x: 0, y: -1 })).toEqual({ kind: 'piece', id: 's2', gap: 100 });
    // Beside it, not before it.
    expect(by(shelf('s1', 3000, 700), [shelf('s2', 4050, 700)], { x: 0, y: -1 })).toEqual({ kind: 'wall', id: 'wall:c1', gap: 500 });
  });

  it('carried: the nearest on any side; nothing within 1.50 m, nothing named', () => {
    expect(by(shelf('s1', 700, 2500), [shelf('s2', 700, 3500)], null)).toEqual({ kind: 'wall', id: 'wall:c4', gap: 200 });
    expect(by(shelf('s1', 3000, 2500), [], null)).toBeNull();
  });

  it('is measured square to a wall that it stands before, as a tape is held: never slantwise to the end of one round the corner', () => {
    const corners = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [3000, 3000],
      [3000, 5000],
      [0, 5000],
    ].map(([x = 0, y = 0], i) => ({ id: `c${i + 1}`, x, y }));
    const end = (x: number, y: number) => {
      const made = setting(shelf('s1', 3000, 1500), shelf('s1', x, y), [], { room: { corners } });
      return standsBy(made.end, [], made.room, null);
    };
    // Its corner lies 0.95 m from where the wall round the corner begins.
    expect(end(1600, 2500)).toEqual({ kind: 'wall', id: 'wall:c6', gap: 1100 });
    expect(end(2300, 4000)).toEqual({ kind: 'wall', id: 'wall:c4', gap: 200 });
    // Half of it lies before that wall.
    expect(end(2700, 2500)).toEqual({ kind: 'wall', id: 'wall:c3', gap: 300 });
    expect(end(3200, 2500)).toEqual({ kind: 'wall', id: 'wall:c3', gap: 300 });
  });
});

import loadHighs from 'highs';
import { expect, it } from 'vitest';
import { groundsKey, matGrounds } from '#client/mats/matGrounds.ts';
import { pickWith } from '#model/geometry/pickMost.ts';
import { proveMats } from '#model/measures/matProof.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import type { PlainRoomChange } from '#tests/support/plainRoom.ts';
import { planSession } from '../plan/planSession.ts';

/** 3700 x 1800 mm with a sink, a table with a seat and a shelf by the wall. */
const small: PlainRoomChange = {
  room: {
    corners: [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 3700, y: 0 },
      { id: 'c3', x: 3700, y: 1800 },
      { id: 'c4', x: 0, y: 1800 },
    ],
    fixtures: [{ id: 'f1', kind: 'sink', x: 200, y: 1600, width: 400, depth: 300 }],
  },
  floorWork: { mat: { width: 1200, depth: 750 }, gap: 300, wanted: 4 },
  pieces: [
    { id: 's1', kind: 'shelf', x: 3200, y: 100, width: 800, depth: 200, height: 700 },
    { id: 't1', kind: 'table', x: 2900, y: 1500, width: 500, depth: 400, seatSides: { front: 1 } },
  ],
};

/** Notes each field of the classroom that is read, by its path, as deep as the grounds go. */
function noted<T extends object>(object: T, path: string, depth: number, read: Set<string>): T {
  return new Proxy(
    { ...object },
    {
      get(of, key) {
        const value: unknown = Reflect.get(of, key);
        if (typeof key !== 'string') return value;
        read.add(`${path}${key}`);
        return depth > 0 && typeof value === 'object' && value !== null && !Array.isArray(value)
          ? noted(value, `${path}${key}.`, depth - 1, read)
          : value;
      },
    },
  );
}

it('are all that the proof reads of the classroom itself', async () => {
  const pick = pickWith(await loadHighs());
  const read = new Set<string>();
  const scene = buildScene(planSession(small).classroom());
  const watched = { ...scene, classroom: noted(scene.classroom, '', 2, read) };
  const proof = proveMats(watched, seatStrips(watched), { pick, rounds: 4 });
  while (!proof.next().done);
  // Beside it the scene's walls, openings, bodies and open sides, made of corners, openings, fixtures and pieces.
  const known = /^(access(\..*)?|floorWork|floorWork\.(gap|mat)(\..*)?)$/;
  expect([...read].filter((path) => !known.test(path))).toEqual([]);
  expect(read).toContain('floorWork.mat');
  expect(read).toContain('access.frontStrip');
});

it('stay the same when the picture is faded or a remark is made, and not when a wall, a thing or the mat changes', () => {
  const session = planSession(small);
  const grounds = () => matGrounds(session.classroom(), session.arrangement().pieces);
  const isSame = (p: readonly unknown[], q: readonly unknown[]) => p.every((value, i) => value === q[i]);
  const before = grounds();
  session.commands.changeRoom({ picture: { fade: 20 } });
  session.commands.addRemark({ text: 'Look', on: null, x: 0, y: 0, by: '' });
  session.commands.changeRoom({ toilets: 2 });
  expect(isSame(before, grounds())).toBe(true);
  session.commands.movePiece('a1', 's1', { x: 3000, y: 100 });
  expect(isSame(before, grounds())).toBe(false);
  expect(groundsKey(before)).not.toBe(groundsKey(grounds()));
  session.undo.takeBack();
  expect(groundsKey(before)).toBe(groundsKey(grounds()));
});

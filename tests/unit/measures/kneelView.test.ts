import { describe, expect, it } from 'vitest';
import { inPicture, lookAtSide, lookRulesOf, seesInto } from '#model/measures/kneelView.ts';
import { measureReach } from '#model/measures/reach.ts';
import { standOffAt } from '#model/measures/reachCurves.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

// Central perspective by similar triangles, worked by hand: an eye 200 mm before the picture sees a point 300 mm behind
// it at 200 / 500 of its way from the eye's own place.
describe('a point behind the shelf front', () => {
  const eye = { along: 600, distance: 200, height: 800 };
  it.each([
    [
      { x: 100, y: 300, z: 300 },
      { x: 400, z: 600 },
    ],
    [
      { x: 600, y: 300, z: 800 },
      { x: 600, z: 800 },
    ],
    [
      { x: 100, y: 0, z: 300 },
      { x: 100, z: 300 },
    ],
    [
      { x: 1200, y: 600, z: 1000 },
      { x: 750, z: 850 },
    ],
  ])('%o is seen on the front at %o', (point, seen) => {
    const at = inPicture(eye, point);
    expect(at.x).toBeCloseTo(seen.x, 9);
    expect(at.z).toBeCloseTo(seen.z, 9);
  });
  it('lies at eye level where the eye touches the front', () => {
    expect(inPicture({ ...eye, distance: 0 }, { x: 100, y: 300, z: 300 })).toEqual({ x: 600, z: 800 });
  });
});

const thing = (id: string, change: object = {}) => ({ id, name: id, width: 200, depth: 200, height: 60, ...change });

function look(distance: number, change: PlainRoomChange = {}) {
  const scene = buildScene(
    plainRoom({
      pieces: [
        {
          id: 's1',
          kind: 'shelf',
          x: 3000,
          y: 160,
          width: 1200,
          depth: 320,
          height: 700,
          levels: [
            { id: 'top', surface: 700 },
            { id: 'low', surface: 60, clear: 250 },
          ],
        },
      ],
      materials: [thing('high'), thing('deep'), thing('behind'), thing('wall', { height: 240, depth: 60 })],
      placements: [
        { material: 'high', piece: 's1', level: 'top', x: 100 },
        { material: 'deep', piece: 's1', level: 'low', x: 100 },
        { material: 'wall', piece: 's1', level: 'low', x: 600 },
        { material: 'behind', piece: 's1', level: 'low', x: 600, y: 100 },
      ],
      ...change,
    }),
  );
  const reach = measureReach(scene);
  const [side] = scene.sides;
  if (!side || !reach.smallest) throw new Error('a shelf and a child');
  const standOff = standOffAt(reach.smallest);
  const looks = lookAtSide(reach, side, reach.smallest, Math.max(distance, standOff), lookRulesOf(scene.classroom));
  return (id: string) => looks.find(({ tray }) => tray.material.id === id);
}

describe('what she sees from where she stands', () => {
  it('into the top board only from near; from farther it is too flat', () => {
    expect(look(0)('high')?.look).toBe('seen');
    expect(look(800)('high')?.look).toBe('too flat');
  });
  it('into the low board only from farther back; from near the board above hides it', () => {
    expect(look(0)('deep')?.look).toBe('board above');
    const far = look(1200)('deep');
    expect(far?.look).toBe('seen');
    expect(far?.from?.nearest).toBeGreaterThan(100);
  });
  it('names what stands before a thing on the same board, which the check does not ask', () => {
    const one = look(1200)('behind');
    expect(one?.look).toBe('seen');
    expect(one?.before?.material.id).toBe('wall');
    expect(look(1200)('deep')?.before).toBe(null);
  });
  it('nothing beyond the free floor, and says how much there is', () => {
    const one = look(1200, {
      pieces: [
        {
          id: 's1',
          kind: 'shelf',
          x: 3000,
          y: 160,
          width: 1200,
          depth: 320,
          height: 700,
          levels: [{ id: 'low', surface: 60, clear: 250 }],
        },
        { id: 't1', kind: 'table', x: 3000, y: 1120, width: 1200, depth: 600 },
      ],
      materials: [thing('deep')],
      placements: [{ material: 'deep', piece: 's1', level: 'low', x: 100 }],
    })('deep');
    expect(one?.look).toBe('no floor');
    expect(one?.floor).toBeCloseTo(500, 6);
  });
  it('cannot be told of a thing without a size where it decides', () => {
    expect(
      look(220, {
        materials: [{ id: 'deep', name: 'deep', height: 60 }],
        placements: [{ material: 'deep', piece: 's1', level: 'low', x: 100 }],
      })('deep')?.look,
    ).toBe('not known');
  });
  it('not into what is as high as her eyes, however near: a line from the eye over its top would have to rise', () => {
    // By hand: board at 680, eye of the girl of 3 years at 778 (CDC Growth Charts, 2000, times the share of UM-HSRI-77-17,
    // 1977). 97 mm stand up to 777, a box of 120 mm to 800. The spot in the middle of it is 100 mm behind the front: from
    // 103 mm before it the line falls by atan(98 / 203) = 26 degrees, from 900 mm by atan(98 / 1000) = 5.6; seen are 15.
    const at680 = {
      pieces: [
        { id: 's1', kind: 'shelf' as const, x: 3000, y: 160, width: 1200, depth: 320, height: 680, levels: [{ id: 'top', surface: 680 }] },
      ],
      materials: [thing('low', { height: 97 }), thing('box', { height: 120 }), thing('open', { height: null })],
      placements: ['low', 'box', 'open'].map((material, i) => ({ material, piece: 's1', level: 'top', x: 100 + 300 * i })),
    };
    const all = (distance: number) =>
      ['low', 'box', 'open'].map((id) => {
        const one = look(distance, at680)(id);
        return one && [one.look, one.topOverEye, seesInto(one)];
      });
    expect(all(0)).toEqual([
      ['seen', null, true],
      ['seen', 800, false],
      ['seen', null, true],
    ]);
    expect(all(900)).toEqual([
      ['too flat', null, false],
      ['too flat', 800, false],
      ['too flat', null, false],
    ]);
  });
  it('above her eyes', () => {
    const one = look(300, {
      pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 160, width: 1200, depth: 320, height: 1500, levels: [{ id: 'top', surface: 1500 }] }],
      materials: [thing('high')],
      placements: [{ material: 'high', piece: 's1', level: 'top', x: 100 }],
    })('high');
    expect(one?.look).toBe('above the eye');
    expect(one?.from).toBe(null);
  });
  it('goes by the angle and the way back that the class set for the check', () => {
    expect(lookRulesOf({ options: {} })).toEqual({ angle: 15, stepBack: 2500 });
    expect(lookRulesOf({ options: { 'reach/see': { angle: 20, stepBack: 'far' } } })).toEqual({ angle: 20, stepBack: 2500 });
    expect(look(1200, { options: { 'reach/see': { stepBack: 1000 } } })('deep')?.look).toBe('no floor');
  });
});

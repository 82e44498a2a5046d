import fc from 'fast-check';
import { expect, it } from 'vitest';
import { kneelDrawing } from '#client/front/kneel/kneelDrawing.ts';
import { inPicture, lookAtSide, lookRulesOf, type TrayLook } from '#model/measures/kneelView.ts';
import { measureReach } from '#model/measures/reach.ts';
import { standOffAt } from '#model/measures/reachCurves.ts';
import { judgeSee } from '#model/measures/trayReach.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

// The check reach/see solves for the distances from which a thing is seen; the view projects one distance. Two ways to
// the same answer, held against each other.

const size = (min: number, max: number) => fc.integer({ min: min / 10, max: max / 10 }).map((n) => n * 10);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { freq: 5, nil: null });
const level = fc.record({ surface: size(20, 1100), clear: maybe(size(60, 300)), setBack: fc.constantFrom(0, 0, 40) });
const thing = fc.record({
  width: size(80, 500),
  depth: size(60, 420),
  height: size(20, 260),
  fromMonths: maybe(fc.constantFrom(36, 48, 60)),
  board: fc.nat(3),
  x: size(0, 900),
  y: fc.constantFrom(0, 0, 0, 60, 140),
});
const room = fc
  .record({
    levels: fc.array(level, { minLength: 1, maxLength: 4 }),
    things: fc.array(thing, { minLength: 1, maxLength: 6 }),
    depth: size(250, 500),
    height: size(300, 1200),
    y: size(400, 4700),
    toeRecess: fc.constantFrom(0, 0, 50, 200),
    months: fc.constantFrom(30, 36, 60),
    angle: fc.constantFrom(15, 15, 8, 25),
    stepBack: fc.constantFrom(2500, 2500, 900),
  })
  .map(
    ({ levels, things, depth, height, y, toeRecess, months, angle, stepBack }): Scene =>
      buildScene(
        plainRoom({
          children: { groups: [{ id: 'g1', fromMonths: months, toMonths: months + 24, count: 8 }] },
          options: { 'reach/see': { angle, stepBack } },
          pieces: [
            {
              id: 's1',
              kind: 'shelf',
              x: 3000,
              y,
              width: 1200,
              depth,
              height,
              toeRecess,
              levels: levels.map((one, i) => ({ id: `l${i}`, ...one })),
            },
            { id: 'x1', kind: 'other', x: 3200, y: 2600, width: 900, depth: 300 },
          ],
          materials: things.map(({ width, depth: deep, height: high, fromMonths }, i) => ({
            id: `m${i}`,
            name: `thing ${i}`,
            width,
            depth: deep,
            height: high,
            fromMonths,
          })),
          placements: things.map(({ board, x, y: at }, i) => ({
            material: `m${i}`,
            piece: 's1',
            level: `l${board % levels.length}`,
            x,
            y: at,
          })),
        }),
      ),
  );

/** mm: nearer to a limit than this either answer is right */
const EDGE = 1e-3;

it('a thing is seen in the view at a distance just when the check sees it from there', () => {
  let [seen, hidden, flat, short] = [0, 0, 0, 0];
  fc.assert(
    fc.property(room, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 8 }), (scene, shares) => {
      const [side] = scene.sides;
      if (!side) throw new Error('one shelf');
      const reach = measureReach(scene);
      const rules = lookRulesOf(scene.classroom);
      for (const board of side.boards) {
        for (const tray of board.trays) {
          const child = reach.meantFor(tray.material);
          if (!child) throw new Error('children are entered');
          const check = judgeSee(child, reach.spotOf(side, board, tray), tray, rules);
          const lookFrom = (distance: number): TrayLook => {
            const found = lookAtSide(reach, side, child, distance, rules).find((one) => one.tray === tray);
            if (!found) throw new Error('every tray is in the view');
            return found;
          };
          const nearest = standOffAt(child, side.piece.toeRecess);
          for (const share of shares) {
            const distance = nearest + share * 2600;
            const one = lookFrom(distance);
            const isByCheck = check.from !== null && distance >= check.from.nearest && distance <= check.from.farthest;
            const isAtEdge =
              check.from !== null && (Math.abs(distance - check.from.nearest) < EDGE || Math.abs(distance - check.from.farthest) < EDGE);
            if (!isAtEdge) expect(one.look === 'seen', `${one.look} from ${distance}, check ${JSON.stringify(check)}`).toBe(isByCheck);
            seen += Number(one.look === 'seen');
            hidden += Number(one.look === 'board above');
            flat += Number(one.look === 'too flat');
            short += Number(one.look === 'no floor');
            expect(one.from === null).toBe(check.from === null);
          }
          // Where the check says "from here on", the view agrees; where it says "from nowhere", no distance will do.
          if (check.verdict === 'fine' && check.from) expect(lookFrom((check.from.nearest + check.from.farthest) / 2).look).toBe('seen');
          else for (let step = 0; step <= 50; step++) expect(lookFrom(nearest + step * 50).look).not.toBe('seen');
        }
      }
    }),
    { numRuns: 150, seed: 20261125 },
  );
  // Every way to look comes up, so that none of it is empty.
  for (const count of [seen, hidden, flat, short]) expect(count).toBeGreaterThan(50);
});

it('what is drawn agrees with what is said: a spot behind the board above lies above its opening, any other within', () => {
  fc.assert(
    fc.property(room, fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (scene, share, beside) => {
      const [side] = scene.sides;
      const reach = measureReach(scene);
      const child = reach.smallest;
      if (!side || !child) throw new Error('one shelf, and children');
      const distance = standOffAt(child, side.piece.toeRecess) + share * 2400;
      const eye = { along: beside * side.width, distance, height: child.eye };
      const drawing = kneelDrawing(side, eye);
      for (const one of lookAtSide(reach, side, child, distance, lookRulesOf(scene.classroom))) {
        const opening = drawing.openings.find(({ key }) => key === (one.board.level?.id ?? 'top'));
        if (!opening || !one.spot) throw new Error('every board is drawn');
        const drawn = inPicture(eye, one.spot).z;
        const isAbove = opening.to !== null && drawn > opening.to + EDGE;
        if (isAbove) expect(['board above', 'above the eye', 'no floor']).toContain(one.look);
        if (one.look === 'seen' || one.look === 'too flat') {
          expect(drawn).toBeGreaterThanOrEqual(opening.from - EDGE);
          expect(opening.to === null || drawn <= opening.to + EDGE).toBe(true);
        }
      }
    }),
    { numRuns: 200, seed: 20261126 },
  );
});

it('the front itself is drawn true to scale, whatever the distance', () => {
  fc.assert(
    fc.property(room, fc.double({ min: 50, max: 2500, noNaN: true }), (scene, distance) => {
      const [side] = scene.sides;
      if (!side) throw new Error('one shelf');
      const { openings } = kneelDrawing(side, { along: 300, distance, height: 780 });
      const board = side.boards.find(({ level: own, setBack }) => own && setBack === 0);
      const tray = board?.trays.find(({ placement }) => placement.y === 0);
      if (!board || !tray) return;
      const drawn = openings.find(({ key }) => key === board.level?.id)?.trays.find((each) => each.tray === tray);
      expect(drawn?.front.width).toBeCloseTo(tray.width ?? 0, 6);
      expect(drawn?.front.z).toBeCloseTo(board.surface ?? 0, 6);
      expect(drawn?.front.height).toBeCloseTo(tray.height ?? 0, 6);
    }),
    { numRuns: 100, seed: 20261127 },
  );
});

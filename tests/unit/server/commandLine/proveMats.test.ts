import { expect, it } from 'vitest';
import { measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import { proveMats, sayProof } from '#server/commandLine/proveMats.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

/** Mats among two shelves: more than one round to prove. */
const room = plainRoom({
  pieces: [
    { id: 's1', kind: 'shelf', x: 2300, y: 2000, width: 1200, depth: 320, height: 700 },
    { id: 's2', kind: 'shelf', x: 4100, y: 3300, width: 1200, depth: 320, height: 700, rotation: 40 },
  ],
});

it('finds no fewer mats than the report does without a proof, however soon the time is over', async () => {
  const scene = buildScene(room);
  const usual = measureMats(scene, seatStrips(scene), 'better');
  if (!usual) throw new Error('the walls hold');
  expect(usual.count).toBeGreaterThan(1);
  expect(usual.proven).toBe(false);
  const proof = await proveMats(room, null, 0);
  expect(proof.mats).toMatchObject({ count: usual.count, upperBound: usual.upperBound, proven: false });
  expect(sayProof(proof)).toMatch(new RegExp(`^Mats: at least ${usual.count}, at most ${usual.upperBound}; not proved in \\d`));
});

it('counts the time from when it begins', async () => {
  let clock = 100;
  // Each look at the clock takes a second.
  const { mats, took } = await proveMats(room, null, 3, () => clock++);
  expect(mats?.proven).toBe(false);
  expect(took).toBeGreaterThanOrEqual(3);
  expect(took).toBeLessThan(10);
});

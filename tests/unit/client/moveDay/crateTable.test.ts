import { expect, it } from 'vitest';
import { sayInside } from '#client/moveDay/CrateTable.tsx';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

it('says runs of steps apart from each other, and strands apart from strands', () => {
  const steps = [1, 2, 3, 4, 5, 7, 8];
  const classroom = plainRoom({
    materials: [
      ...steps.map((step) => ({ id: `n${step}`, name: `Numbers ${step}`, strand: 'numbers', step })),
      { id: 'n6', name: 'Numbers 6', strand: 'numbers', step: 6 },
      { id: 't1', name: 'Tens', strand: 'tens', step: 1 },
      { id: 'x', name: 'Globe', strand: '' },
    ],
  });
  const day = { plan: { to: buildScene(classroom) } } as unknown as Parameters<typeof sayInside>[0];
  const inside = [...steps.map((step) => `n${step}`), 't1'];
  expect(sayInside(day, inside)).toBe('numbers 1 to 5, 7, 8; tens 1');
});

import { expect, it } from 'vitest';
import { areasInside, sayInside } from '#client/moveDay/CrateTable.tsx';
import { areaLetters } from '#model/catalogue/areas.ts';
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

it('has a badge for each area in it, once, in the order in which the trays go back', () => {
  const classroom = plainRoom({
    materials: [
      { id: 'c1', name: 'Sinking and floating', area: 'culture', strand: 'science' },
      { id: 'c2', name: 'Calendar', area: 'culture', strand: 'history and time' },
      { id: 'a1', name: 'Clay modelling', area: 'culture', strand: 'art' },
      { id: 'x', name: 'Blank', area: '' },
      { id: 'm1', name: 'Rods', area: 'mathematics' },
    ],
  });
  const day = { plan: { from: buildScene(classroom) } } as unknown as Parameters<typeof areasInside>[0];
  const badges = (...ids: string[]) => areasInside(day, ids).map(({ area, strand }) => areaLetters(area, strand));
  expect(badges('c1', 'c2', 'a1', 'x', 'gone')).toEqual(['CU', 'AR']);
  expect(badges('a1', 'c1', 'm1')).toEqual(['AR', 'CU', 'MA']);
  expect(badges('x')).toEqual([]);
});

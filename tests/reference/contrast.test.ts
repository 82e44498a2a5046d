import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { fromCatalogue } from '#model/catalogue/catalogue.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { contrast } from '#model/rules/order/contrast.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf } from '#tests/support/shelfRoom.ts';

// The Montessori Method, 1912, chapter XIII, and Dr. Montessori's Own Handbook, 1914: the three graded sets of dimension,
// given as tower (three dimensions), broad stair (two), long stair (one), in this order.
const published = ['se-tower', 'se-broad-stair', 'se-long-stair'];

function answer(ids: readonly string[]) {
  const scene = buildScene(
    plainRoom({
      pieces: [shelf('s', { width: 2400 })],
      materials: ids.map((id) => fromCatalogue(id, id)),
      placements: placed({ 's-1': ids.map((id, i) => [id, i * 600] as const) }),
    }),
  );
  return judgeRule(contrast, scene, measuresOf(scene));
}

describe('the graded sets of dimension, in the order of the handbooks', () => {
  it('go from the stronger contrast to the finer', () => expect(answer(published).answer).toBe('fine'));
  it.each([
    ['the long stair first', ['se-long-stair', 'se-tower', 'se-broad-stair'], ['se-tower', 'se-long-stair']],
    ['the broad stair first', ['se-broad-stair', 'se-tower', 'se-long-stair'], ['se-tower', 'se-broad-stair']],
  ])('%s trips it', (_, ids, subjects) => {
    expect(answer(ids).findings.map((finding) => finding.subjects)).toEqual([subjects]);
  });
});

import type { Material } from '../../schema/types.ts';

const counts: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3 };

/**
 * How many qualities vary within a material: one for each it isolates, or as many dimensions as the words in brackets
 * say ("size (three dimensions)"). Null: it does not say what it isolates.
 */
export function qualitiesOf({ isolates }: Pick<Material, 'isolates'>): number | null {
  const said = isolates.filter((quality) => quality.trim() !== '');
  if (said.length === 0) return null;
  return said.reduce((sum, quality) => {
    const dimensions = /\((one|two|three) dimensions?\)/.exec(quality.toLowerCase())?.[1];
    return sum + (dimensions === undefined ? 1 : (counts[dimensions] ?? 1));
  }, 0);
}

import type { Material } from '#model/schema/types.ts';

export interface Findable {
  readonly material: Pick<Material, 'id' | 'name' | 'step' | 'strand' | 'area'>;
  /** "shelf 7, first numbers, top"; "on the table" */
  readonly stands: string;
}

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/**
 * Whether a material is meant by what was typed: every word is found in its name, its strand or where it stands, in any
 * order and without accents; a number alone is its step or its shelf.
 */
export function isMeant({ material, stands }: Findable, typed: string): boolean {
  const words = plain(typed)
    .split(/\s+/)
    .filter((word) => word !== '');
  const text = plain(`${material.name} ${material.strand} ${material.area.replaceAll('-', ' ')} ${stands}`);
  const spoken = new Set(text.split(/[^\p{L}\p{N}.]+/u));
  return words.every((word) => (/^\d+(\.\d+)?$/.test(word) ? String(material.step) === word || spoken.has(word) : text.includes(word)));
}

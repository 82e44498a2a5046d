import type { Material } from '#model/schema/types.ts';

/** One value as the class gives it: it is then known as the class's own. Null: not known any more. */
export function ownValue<K extends keyof Material & string>(material: Material, key: K, value: Material[K]): Partial<Omit<Material, 'id'>> {
  const sure = { ...material.sure };
  if (value === null || value === undefined) delete sure[key];
  else sure[key] = 'own';
  return { [key]: value, sure } as Partial<Omit<Material, 'id'>>;
}

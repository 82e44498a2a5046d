import { type AreaCode, areas } from '#model/catalogue/areas.ts';

/** The two letters that have a hatch, in the order of the badges. */
export const areaCodes: readonly AreaCode[] = [...areas.map((area) => area.code), 'AR'];

export const areaNames: Readonly<Record<AreaCode, string>> = {
  ...(Object.fromEntries(areas.map((area) => [area.code, area.name])) as Record<(typeof areas)[number]['code'], string>),
  AR: 'Art',
};

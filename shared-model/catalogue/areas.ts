/** The five areas and the letters and hatch they are drawn with. Art is a strand of culture, drawn apart. */
export const areas = [
  { id: 'practical-life', name: 'Practical life', code: 'PL' },
  { id: 'sensorial', name: 'Sensorial', code: 'SE' },
  { id: 'mathematics', name: 'Mathematics', code: 'MA' },
  { id: 'language', name: 'Language', code: 'LA' },
  { id: 'culture', name: 'Culture', code: 'CU' },
] as const;
export type AreaCode = (typeof areas)[number]['code'] | 'AR';

/** "Sensorial"; an area of the class's own is said as it was typed. */
export const areaName = (area: string): string => areas.find((known) => known.id === area)?.name ?? area;

/** The two letters of an area of the trade; null for one of the class's own. */
export function areaCode(area: string, strand = ''): AreaCode | null {
  if (area === 'culture' && strand === 'art') return 'AR';
  return areas.find((known) => known.id === area)?.code ?? null;
}

/** Two letters for any area: those of the trade, else the first two letters or figures that were typed, else "--". */
export function areaLetters(area: string, strand = ''): string {
  const own = area.toUpperCase().match(/[\p{L}\p{N}]/gu) ?? [];
  return areaCode(area, strand) ?? (own.slice(0, 2).join('') || '--');
}

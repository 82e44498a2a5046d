export type AreaCode = 'PL' | 'SE' | 'MA' | 'LA' | 'CU' | 'AR';

/** Area of a material -> its two letters. Art is a strand of culture, drawn with its own hatch when a shelf holds little else. */
const codes: Readonly<Record<string, AreaCode>> = {
  'practical-life': 'PL',
  sensorial: 'SE',
  mathematics: 'MA',
  language: 'LA',
  culture: 'CU',
  art: 'AR',
};

export const areaNames: Readonly<Record<AreaCode, string>> = {
  PL: 'Practical life',
  SE: 'Senses',
  MA: 'Mathematics',
  LA: 'Language',
  CU: 'Culture',
  AR: 'Art',
};

export const areaCodes: readonly AreaCode[] = ['PL', 'SE', 'MA', 'LA', 'CU', 'AR'];

/** null: an area of the class's own. */
export function areaCodeOf(area: string): AreaCode | null {
  return codes[area.trim().toLowerCase().replaceAll(' ', '-')] ?? null;
}

/** Two letters for any area: those of the trade, else the first two of its name; null: no area. */
export function lettersOf(area: string): string | null {
  const code = areaCodeOf(area);
  if (code) return code;
  const letters = area.replace(/[^\p{L}\p{N}]/gu, '').slice(0, 2);
  return letters === '' ? null : letters.toUpperCase();
}

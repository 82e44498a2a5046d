/** Reading a length as a person types it. */
export type ReadLength = { ok: true; mm: number } | { ok: false; why: string };

const MM_PER_INCH = 25.4;
const number = String.raw`\d+(?:[.,]\d+)?`;
// After feet the mark of the inches may be left out, as on a tape: 5'3.
const feetInches = new RegExp(
  String.raw`^(?:(${number})\s*(?:'|ft|feet|foot)\s*)?(?:(${number}(?!\s*/))?\s*(?:(\d+)\s*/\s*(\d+))?\s*("|''|in|inch|inches)?)?$`,
);
const metric = new RegExp(String.raw`^(${number})\s*(mm|cm|m)?$`);

/**
 * "1.6 m", "160 cm", "1600 mm", "5' 3 1/2\"", or a bare number.
 * A bare number with a decimal sign is metres, otherwise centimetres (metric) or inches (imperial).
 * @returns mm, or why it could not be read. Never throws.
 */
export function readLength(text: string, units: 'metric' | 'imperial' = 'metric'): ReadLength {
  const typed = text.trim().toLowerCase().replaceAll('’', "'").replaceAll('”', '"').replaceAll('″', '"').replaceAll('′', "'");
  if (typed === '') return { ok: false, why: 'Nothing was typed.' };
  const m = metric.exec(typed);
  if (m) return { ok: true, mm: metricToMm(m[1] ?? '', m[2], units) };
  const f = feetInches.exec(typed);
  if (f && (f[1] || (f[5] && (f[2] || f[3])))) {
    const inches = toNumber(f[2]) + (f[3] && f[4] ? Number(f[3]) / Number(f[4]) : 0);
    const total = (toNumber(f[1]) * 12 + inches) * MM_PER_INCH;
    if (Number.isFinite(total)) return { ok: true, mm: total };
  }
  const tries = units === 'imperial' ? `5' 3 1/2", 63 (inches) or 1.6 m` : `1.6 m, 160 (centimetres) or 5' 3 1/2"`;
  return { ok: false, why: `"${text.trim()}" is no length. Try ${tries}.` };
}

/** A bare number this small, cm or inches, may have been meant as metres or feet. */
const SMALL = { metric: 20, imperial: 30 } as const;

/** What a short bare number is not, so that nobody measures a wall of 5 cm: "for 5 metres type 5 m". Null: nothing to say. */
export function otherReading(text: string, units: 'metric' | 'imperial' = 'metric'): string | null {
  const typed = text.trim();
  if (!/^\d+$/.test(typed) || Number(typed) === 0 || Number(typed) > SMALL[units]) return null;
  return units === 'imperial' ? `for ${Number(typed)} feet type ${Number(typed)}'` : `for ${Number(typed)} metres type ${Number(typed)} m`;
}

function metricToMm(digits: string, unit: string | undefined, units: 'metric' | 'imperial'): number {
  const value = toNumber(digits);
  if (unit === 'mm') return value;
  if (unit === 'cm') return value * 10;
  if (unit === 'm') return value * 1000;
  if (units === 'imperial') return value * MM_PER_INCH;
  return /[.,]/.test(digits) ? value * 1000 : value * 10;
}

function toNumber(digits: string | undefined): number {
  return digits === undefined ? 0 : Number(digits.replace(',', '.'));
}

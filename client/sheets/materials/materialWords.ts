import type { Material } from '#model/schema/types.ts';
import { sayDecimal } from '#model/units/round.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { sayYears } from '../../text/sayAges.ts';

/** "0.56 × 0.08, 0.08 m high": what is known of a material's size. */
export function saySize({ width, depth, height }: Pick<Material, 'width' | 'depth' | 'height'>, units: LengthUnits): string {
  const say = (mm: number | null): string => (mm === null ? '?' : sayLength(mm, units));
  if (width === null && depth === null && height === null) return 'not known';
  return `${say(width)} wide, ${say(depth)} deep, ${say(height)} high`;
}

export function sayAge({ fromMonths, toMonths }: Pick<Material, 'fromMonths' | 'toMonths'>): string {
  if (fromMonths === null) return 'not known';
  return toMonths === null ? `from ${sayYears(fromMonths)}` : `from ${sayYears(fromMonths)} to ${sayYears(toMonths)}`;
}

const carriedWords: Readonly<Record<NonNullable<Material['carried']>, string>> = {
  whole: 'carried whole',
  pieces: 'carried piece by piece',
  stays: 'stays where it stands',
};

export function sayCarried({ carried, hands, heaviest }: Pick<Material, 'carried' | 'hands' | 'heaviest'>): string {
  const parts = [
    carried ? carriedWords[carried] : 'how it is carried is not known',
    hands === null ? '' : hands === 1 ? 'with one hand' : 'with both hands',
    heaviest === null ? '' : `${sayDecimal(heaviest, 2)} kg at once`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

const modes: Readonly<Record<NonNullable<Material['mode']>, string>> = {
  match: 'matching',
  pair: 'pairing',
  grade: 'grading',
  sequence: 'putting in sequence',
  practise: 'practising',
  name: 'naming',
};
export const sayMode = (mode: Material['mode']): string => (mode ? modes[mode] : 'not said');
export const modeOptions = [{ value: '', text: 'not said' }, ...Object.entries(modes).map(([value, text]) => ({ value, text }))] as const;

/** How a value is known, for the reader: nothing where nobody said. */
export const saySure = (material: Pick<Material, 'sure'>, key: string): string => material.sure[key] ?? '';

/** A value in words, with how it is known; empty: nobody said. */
export interface SureValue {
  readonly say: string;
  readonly sure: string;
}

/** What the catalogue knows of a material, each value with how sure it is; what it does not know is left out. */
export function sureValues(material: Material, units: LengthUnits): SureValue[] {
  const { step, fromMonths, toMonths, width, depth, height, mass } = material;
  const value = (isKnown: boolean, say: string, ...keys: string[]): SureValue[] =>
    isKnown ? [{ say, sure: leastSure(keys.map((key) => saySure(material, key))) }] : [];
  return [
    ...value(typeof step === 'number', `step ${step}`, 'step'),
    ...value(fromMonths !== null, `from age ${sayYears(fromMonths ?? 0)}`, 'fromMonths'),
    ...value(toMonths !== null, `to ${sayYears(toMonths ?? 0)}`, 'toMonths'),
    ...value(width !== null || depth !== null || height !== null, saySize(material, units), 'width', 'depth', 'height'),
    ...value(mass !== null, `${sayDecimal(mass ?? 0, 2)} kg`, 'mass'),
  ];
}

/** One word for several figures: they are as sure as the least sure of them. Other words than the usual are kept. */
const leastSure = (said: readonly string[]): string =>
  ['estimate', 'own', 'common practice', 'derived from published', 'published'].find((each) => said.includes(each)) ??
  said.find((each) => each !== '') ??
  '';

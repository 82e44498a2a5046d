import { type Quantity, sayQuantity } from '../units/quantity.ts';
import type { LengthUnits } from '../units/sayLength.ts';
import type { MessageValue } from './finding.ts';

/**
 * Fills "{name}" in a message. Quantities are said in the class's units, in whole mm within 10 mm of `near`.
 * @throws Error when the text names a value that the data lacks: a mistake in a rule, caught by its test.
 */
export function fillMessage(text: string, data: Readonly<Record<string, MessageValue>>, units: LengthUnits, near?: Quantity): string {
  const pieces = piecesOf(text);
  let filled = pieces[0] ?? '';
  for (let k = 1; k + 1 < pieces.length; k += 2) {
    const name = pieces[k] as string;
    const value = data[name];
    if (value === undefined) throw new Error(`message "${text}" needs a value for {${name}}`);
    const words = typeof value === 'object' ? sayQuantity(value, units, near?.unit === value.unit ? near.value : undefined) : String(value);
    filled += words + (pieces[k + 1] as string);
  }
  return filled;
}

const known = new Map<string, readonly string[]>();

/** Plain text and the names between in turn. The texts are those of the rules, so few are kept. */
function piecesOf(text: string): readonly string[] {
  const before = known.get(text);
  if (before) return before;
  const pieces = text.split(/\{(\w+)\}/);
  known.set(text, pieces);
  return pieces;
}

import { type Quantity, sayQuantity } from '../units/quantity.ts';
import type { LengthUnits } from '../units/sayLength.ts';
import type { MessageValue } from './finding.ts';

/**
 * Fills "{name}" in a message. Quantities are said in the class's units, in whole mm within 10 mm of `near`.
 * @throws Error when the text names a value that the data lacks: a mistake in a rule, caught by its test.
 */
export function fillMessage(text: string, data: Readonly<Record<string, MessageValue>>, units: LengthUnits, near?: Quantity): string {
  return text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = data[name];
    if (value === undefined) throw new Error(`message "${text}" needs a value for {${name}}`);
    if (typeof value !== 'object') return String(value);
    return sayQuantity(value, units, near?.unit === value.unit ? near.value : undefined);
  });
}

import { type ReactNode, useState } from 'react';
import { Field } from './Field.tsx';

interface Props {
  readonly label: ReactNode;
  readonly value: number | null;
  readonly onCommit: (value: number | null) => void;
  readonly least: number;
  readonly most: number;
  readonly isWhole?: boolean;
  readonly mayBeEmpty?: boolean;
  readonly echo?: string | null;
}

/** A number. A slip is told and changes nothing. */
export function NumberField({ label, value, onCommit, least, most, isWhole = true, mayBeEmpty = false, echo = null }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const wrong = typed === null ? null : whyNot(typed, least, most, isWhole, mayBeEmpty);

  function commit() {
    if (typed === null || wrong) return;
    const next = typed.trim() === '' ? null : Number(typed.trim().replace(',', '.'));
    if (next !== value) onCommit(next);
    setTyped(null);
  }

  return (
    <Field label={label} wrong={wrong} echo={echo}>
      {(wiring) => (
        <input
          {...wiring}
          type="text"
          inputMode={isWhole ? 'numeric' : 'decimal'}
          autoComplete="off"
          value={typed ?? (value === null ? '' : String(value))}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape' && typed !== null) {
              event.stopPropagation();
              setTyped(null);
            }
          }}
        />
      )}
    </Field>
  );
}

function whyNot(typed: string, least: number, most: number, isWhole: boolean, mayBeEmpty: boolean): string | null {
  const text = typed.trim().replace(',', '.');
  if (text === '') return mayBeEmpty ? null : 'A number is wanted here.';
  const number = Number(text);
  if (!Number.isFinite(number)) return `"${typed.trim()}" is no number.`;
  if (isWhole && !Number.isInteger(number)) return 'A whole number is wanted here.';
  if (number < least || number > most) return `A number from ${least} to ${most} is wanted here.`;
  return null;
}

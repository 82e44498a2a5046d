import type { ReactNode } from 'react';
import { Field } from './Field.tsx';

interface Props<T extends string> {
  readonly label: ReactNode;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly onChange: (value: T) => void;
  readonly echo?: string | null;
}

/** One of a longer list. */
export function Select<T extends string>({ label, value, options, onChange, echo = null }: Props<T>) {
  return (
    <Field label={label} echo={echo}>
      {(wiring) => (
        <select
          {...wiring}
          value={value}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.target.value);
            if (chosen) onChange(chosen.value);
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

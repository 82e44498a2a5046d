import { type ReactNode, useState } from 'react';
import { Field } from './Field.tsx';

interface Props {
  readonly label: ReactNode;
  readonly value: string;
  readonly onCommit: (text: string) => void;
  readonly mayBeEmpty?: boolean;
  readonly type?: 'text' | 'date';
  readonly most?: number;
}

/** A line of text, taken when you leave it or press Enter. */
export function TextField({ label, value, onCommit, mayBeEmpty = true, type = 'text', most = 200 }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const wrong = typed !== null && typed.trim() === '' && !mayBeEmpty ? 'Something is wanted here.' : null;

  function commit() {
    if (typed === null || wrong) return;
    if (typed.trim() !== value) onCommit(typed.trim());
    setTyped(null);
  }

  return (
    <Field label={label} wrong={wrong}>
      {(wiring) => (
        <input
          {...wiring}
          type={type}
          maxLength={type === 'text' ? most : undefined}
          autoComplete="off"
          value={typed ?? value}
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

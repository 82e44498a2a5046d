import { type ReactNode, useState } from 'react';
import { otherReading, readLength } from '#model/units/readLength.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { Field } from './Field.tsx';

interface Props {
  readonly label: ReactNode;
  /** mm; null: not known */
  readonly value: number | null;
  readonly units: LengthUnits;
  readonly onCommit: (mm: number | null) => void;
  /** Called at each key with what has been understood so far; null: nothing. */
  readonly onTyping?: (mm: number | null) => void;
  /** Enter was pressed and what is typed holds (mm; null: empty). */
  readonly onEnter?: (mm: number | null) => void;
  readonly mayBeEmpty?: boolean;
  /** mm */
  readonly least?: number;
  /** mm */
  readonly most?: number;
  /** It is of a size that nobody gives in a few centimetres or inches. */
  readonly isLong?: boolean;
  readonly placeholder?: string;
  readonly autoFocus?: boolean;
}

/** A length typed as people write it. What was understood is read back while typing; a slip is told and changes nothing. */
export function LengthField({
  label,
  value,
  units,
  onCommit,
  onTyping,
  onEnter,
  mayBeEmpty = false,
  least = 1,
  most = 100_000,
  isLong = false,
  placeholder,
  autoFocus,
}: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  // The line below stays after the field is left: were it to go, a button under it would slip from under the finger.
  const [taken, setTaken] = useState<{ readonly mm: number | null; readonly other: string | null } | null>(null);
  const shown = typed ?? (value === null ? '' : sayLength(value, units));
  const read = typed === null ? null : understand(typed, units, mayBeEmpty, least, most);

  const stays = taken?.mm === value ? taken : null;
  const echoed = read ? (read.ok ? read.mm : null) : (stays?.mm ?? null);
  const other = typed === null ? stays?.other : isLong ? otherReading(typed, units) : null;

  function commit() {
    if (read?.ok) {
      if (read.mm !== value) onCommit(read.mm);
      setTaken({ mm: read.mm, other: other ?? null });
      setTyped(null);
    }
  }

  return (
    <Field
      label={label}
      echo={echoed === null ? null : `reads as ${sayLength(echoed, units)}${other ? `; ${other}` : ''}`}
      wrong={read && !read.ok ? read.why : null}
    >
      {(wiring) => (
        <input
          {...wiring}
          type="text"
          inputMode="text"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: only in a dialog whose first question this is
          autoFocus={autoFocus}
          placeholder={placeholder}
          value={shown}
          onChange={(event) => {
            setTyped(event.target.value);
            const understood = understand(event.target.value, units, mayBeEmpty, least, most);
            onTyping?.(understood.ok ? understood.mm : null);
          }}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') {
              commit();
              if (onEnter && (!read || read.ok)) {
                event.preventDefault();
                onEnter(read ? read.mm : value);
              }
            }
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

type Understood = { ok: true; mm: number | null } | { ok: false; why: string };

function understand(typed: string, units: LengthUnits, mayBeEmpty: boolean, least: number, most: number): Understood {
  if (typed.trim() === '' && mayBeEmpty) return { ok: true, mm: null };
  const read = readLength(typed, units);
  if (!read.ok) return read;
  if (read.mm < least)
    return { ok: false, why: `${sayLength(read.mm, units)} is too short. It takes at least ${sayLength(least, units)}.` };
  if (read.mm > most) return { ok: false, why: `${sayLength(read.mm, units)} is too long. It takes at most ${sayLength(most, units)}.` };
  return { ok: true, mm: read.mm };
}

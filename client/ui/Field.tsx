import { type ReactNode, useId } from 'react';

interface Props {
  readonly label: ReactNode;
  /** What the typed value means, read back. */
  readonly echo?: string | null;
  readonly wrong?: string | null;
  readonly children: (wiring: { id: string; 'aria-describedby': string | undefined; 'aria-invalid': true | undefined }) => ReactNode;
}

/** Label above, the control, and below it what was understood or what is wrong. */
export function Field({ label, echo = null, wrong = null, children }: Props) {
  const id = useId();
  const said = wrong ?? echo;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children({ id, 'aria-describedby': said ? `${id}-said` : undefined, 'aria-invalid': wrong ? true : undefined })}
      {said && (
        <span id={`${id}-said`} className={wrong ? 'wrong' : 'echo'} role={wrong ? 'alert' : undefined}>
          {said}
        </span>
      )}
    </div>
  );
}

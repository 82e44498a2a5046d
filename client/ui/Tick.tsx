import type { ReactNode } from 'react';

interface Props {
  readonly isTicked: boolean;
  readonly onChange: (isTicked: boolean) => void;
  readonly children: ReactNode;
}

export function Tick({ isTicked, onChange, children }: Props) {
  return (
    <label className="tick">
      <input type="checkbox" checked={isTicked} onChange={(event) => onChange(event.target.checked)} />
      <span>{children}</span>
    </label>
  );
}

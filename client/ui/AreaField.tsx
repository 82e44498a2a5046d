import type { LengthUnits } from '#model/units/sayLength.ts';
import { NumberField } from './NumberField.tsx';
import { inSquareFeet, squareFeet } from './squareFeet.ts';

interface Props {
  /** "Its floor": the unit comes after it */
  readonly label: string;
  /** m² */
  readonly value: number | null;
  readonly units: LengthUnits;
  readonly least: number;
  readonly most: number;
  readonly mayBeEmpty?: boolean;
  readonly echo?: string | null;
  readonly onCommit: (m2: number | null) => void;
}

/** An area in the class's units, kept in m². */
export function AreaField({ label, value, units, least, most, onCommit, ...rest }: Props) {
  if (units === 'metric') return <NumberField {...rest} {...{ value, least, most, onCommit }} label={`${label}, m²`} isWhole={false} />;
  return (
    <NumberField
      {...rest}
      label={`${label}, sq ft`}
      value={value === null ? null : inSquareFeet(value)}
      least={inSquareFeet(least)}
      most={Math.floor(inSquareFeet(most))}
      isWhole={false}
      onCommit={(typed) => onCommit(typed === null ? null : squareFeet(typed))}
    />
  );
}

import { Radio, RadioGroup } from 'react-aria-components';

interface Props<T extends string> {
  readonly label: string;
  readonly isLabelShown?: boolean;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly onChange: (value: T) => void;
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ label, isLabelShown = true, value, options, onChange }: Props<T>) {
  return (
    <RadioGroup
      className="field"
      aria-label={label}
      orientation="horizontal"
      value={value}
      onChange={(next) => {
        const chosen = options.find((option) => option.value === next);
        if (chosen) onChange(chosen.value);
      }}
    >
      {isLabelShown && (
        <span className="field-label" aria-hidden="true">
          {label}
        </span>
      )}
      <div className="choice">
        {options.map((option) => (
          <Radio key={option.value} value={option.value} className="choice-option">
            {option.text}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

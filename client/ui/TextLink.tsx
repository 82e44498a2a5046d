import { Button as AriaButton, type ButtonProps } from 'react-aria-components';

interface Props extends Omit<ButtonProps, 'className'> {
  readonly ink?: boolean;
}

/** A verb that looks like underlined words. It is a button: it goes nowhere. */
export function TextLink({ ink = false, ...rest }: Props) {
  return <AriaButton {...rest} className={ink ? 'text-link ink' : 'text-link'} />;
}

import { Button as AriaButton, type ButtonProps } from 'react-aria-components';

interface Props extends Omit<ButtonProps, 'className'> {
  /** strong: the one thing to do here; quiet: in ink; plain: in blue. */
  readonly kind?: 'plain' | 'strong' | 'quiet';
}

export function Button({ kind = 'plain', ...rest }: Props) {
  return <AriaButton {...rest} className={kind === 'plain' ? 'button' : `button ${kind}`} />;
}

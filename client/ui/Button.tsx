import { Verb, type VerbProps } from './Verb.tsx';

interface Props extends VerbProps {
  /** strong: the one thing to do here; quiet: in ink; plain: in blue. */
  readonly kind?: 'plain' | 'strong' | 'quiet';
}

export function Button({ kind = 'plain', ...rest }: Props) {
  return <Verb {...rest} className={kind === 'plain' ? 'button' : `button ${kind}`} />;
}

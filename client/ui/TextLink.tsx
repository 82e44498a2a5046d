import { Verb, type VerbProps } from './Verb.tsx';

/** A verb that looks like underlined words. It is a button: it goes nowhere. */
export function TextLink({ ink = false, ...rest }: VerbProps & { readonly ink?: boolean }) {
  return <Verb {...rest} className={ink ? 'text-link ink' : 'text-link'} />;
}

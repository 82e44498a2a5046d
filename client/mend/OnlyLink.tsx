import type { MendOnly } from '#model/analysis/mendWays/mendWays.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { MendStore } from './mendStore.ts';

/** A search for less than every way as wide as is asked. */
export function OnlyLink({ store, only }: { readonly store: MendStore; readonly only: MendOnly }) {
  const text = only === 'must' ? 'Only as wide as it must be' : 'Only widen the narrowest place';
  return <TextLink onPress={() => store.look(only)}>{text}</TextLink>;
}

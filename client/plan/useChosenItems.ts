import { useSession, useViewOf } from '../session/hooks.ts';
import type { Item } from './items.ts';
import { itemsChosen } from './set/chosenSet.ts';
import { useChosen } from './useChosen.ts';

/** Everything that is chosen, the first first; draws again when that changes. */
export function useChosenItems(): readonly Item[] {
  const session = useSession();
  useChosen();
  useViewOf('alsoChosen');
  return itemsChosen(session);
}

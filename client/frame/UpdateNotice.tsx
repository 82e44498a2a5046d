import { useSyncExternalStore } from 'react';
import { pageUpdate } from '../session/pageUpdate.ts';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** A newer Lowshelf is here: it comes when the person says so, never under their hands. */
export function UpdateNotice() {
  const state = useSyncExternalStore(pageUpdate.subscribe, pageUpdate.state);
  if (state !== 'waiting') return null;
  return (
    <div className="update-notice" role="status">
      <p>A newer Lowshelf is ready. Everything you made is kept.</p>
      <Button onPress={() => pageUpdate.take()}>Load it now</Button>
      <TextLink onPress={() => pageUpdate.later()}>Later</TextLink>
    </div>
  );
}

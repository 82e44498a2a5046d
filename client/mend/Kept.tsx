import { useScene } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { MendStore } from './mendStore.ts';

/** Pieces that the search leaves where they are. */
export function Kept({ store, kept }: { readonly store: MendStore; readonly kept: readonly string[] }) {
  const scene = useScene();
  const there = kept.flatMap((id) => scene.bodyById.get(id) ?? []);
  if (there.length === 0) return null;
  return (
    <p className="aside mend-kept">
      Stays where it is in the search:{' '}
      {there.map((body) => (
        <span key={body.id}>
          {body.label}{' '}
          <TextLink aria-label={`Let ${body.label} move again`} onPress={() => store.release(body.id)}>
            let it move
          </TextLink>{' '}
        </span>
      ))}
    </p>
  );
}

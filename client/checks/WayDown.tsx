import { keepInSight } from '../ui/keepInSight.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** From the head of the column, which is long, down to a part at its end. `to`: id of its heading. */
export function WayDown({ to, children }: { readonly to: string; readonly children: string }) {
  return (
    <p className="way-down">
      <TextLink onPress={() => goTo(to)}>{children}</TextLink>
    </p>
  );
}

function goTo(id: string): void {
  const title = document.getElementById(id);
  title?.focus({ preventScroll: true });
  if (title) keepInSight(title.closest('section') ?? title);
}

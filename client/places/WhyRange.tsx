import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { MayChange } from '../session/MayChange.tsx';
import { sayCount } from '../text/sayCount.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { PlacesLine } from './placesLine.ts';

/** Why the floor takes between two numbers, with a way to where that is answered; nothing where it is one number. */
export function WhyRange({ line: { byArea, byAreaMost, open } }: { readonly line: PlacesLine }) {
  const dialogs = useFrameDialogs();
  if (byArea === null || byAreaMost === null || byAreaMost <= byArea || open.length === 0) return null;
  return (
    <>
      The floor takes {byArea} to {byAreaMost}: it depends on {sayCount(open.length, 'question')} in “The class”.{' '}
      <MayChange>
        <TextLink onPress={() => dialogs.open('class')}>Answer {open.length === 1 ? 'it' : 'them'}</TextLink>{' '}
      </MayChange>
    </>
  );
}

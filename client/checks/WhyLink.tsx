import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** Opens the page of the check that said this. */
export function WhyLink({ rule, about }: { rule: string; about: string }) {
  const dialogs = useFrameDialogs();
  return (
    <TextLink aria-label={`Why? ${about}`} onPress={() => dialogs.openPage(rule)}>
      Why?
    </TextLink>
  );
}

import { withPracticalLife } from '../front/practicalLife.ts';
import { useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** Says that the order of practical life is left alone in this class, with the switch at the spot. */
export function PracticalLifeWords() {
  const session = useSession();

  function judge(): void {
    session.commands.changeClass({ options: withPracticalLife(session.classroom().options, 'order/sequence', true) });
    session.announce('The order of practical life is judged from now on. “The class” turns it off again.');
  }

  return (
    <p className="aside practical-life-words">
      Practical life is not judged in this class: whether its easier steps stand first is not checked.{' '}
      <MayChange>
        <TextLink onPress={judge}>Judge it too</TextLink> (also under “The class”, Order on the shelves)
      </MayChange>
    </p>
  );
}

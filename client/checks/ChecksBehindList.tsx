import type { Outcome } from '#model/findings/finding.ts';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { rulePages } from '../pages/rulePages.ts';
import { outcomeWords } from '../text/outcomeWords.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** Every check of one question: what it asks, how it came out, and a way to its page. */
export function ChecksBehindList({ id, answers }: { id: string; answers: Readonly<Record<string, Outcome>> }) {
  const dialogs = useFrameDialogs();
  return (
    <ul id={id}>
      {Object.entries(answers).map(([rule, outcome]) => {
        const asks = rulePages.get(rule)?.asks ?? rule;
        return (
          <li key={rule}>
            <span>{asks}</span>
            <b className={`outcome ${outcome}`}>{outcomeWords[outcome]}</b>
            <TextLink aria-label={`Why? ${asks}`} onPress={() => dialogs.openPage(rule)}>
              Why?
            </TextLink>
          </li>
        );
      })}
    </ul>
  );
}

import { Suspense, useId, useState } from 'react';
import type { Outcome } from '#model/findings/finding.ts';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { sayOutcomes } from './sayOutcomes.ts';

const ChecksBehindList = late(() => import('./ChecksBehindList.tsx').then((m) => m.ChecksBehindList));

/** How the checks behind a question came out, in a line; opened, each with its outcome and its page. */
export function ChecksBehind({ asks, answers }: { asks: string; answers: Readonly<Record<string, Outcome>> }) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  if (Object.keys(answers).length === 0) return null;
  return (
    <div className="checks-behind">
      <TextLink
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        aria-label={`${sayOutcomes(answers)}: each check behind “${asks}”, and why`}
        onPress={() => setOpen(!isOpen)}
      >
        {sayOutcomes(answers)}
      </TextLink>
      {isOpen && (
        <Suspense fallback={<p className="aside">The checks are being listed …</p>}>
          <ChecksBehindList id={id} answers={answers} />
        </Suspense>
      )}
    </div>
  );
}

import type { Promised } from '#model/measures/trial.ts';
import { useArrangement, useClassroom } from '../../session/hooks.ts';
import { inPlace } from '../../ui/inPlace.ts';
import { sayTrialFindings } from './sayTrialFindings.ts';
import { useTrialFindings } from './useTrialFindings.ts';

/** What the checks would find with the promised children in the class, each in its own words below when asked for. */
export function WhatChecksSay({ promised }: { readonly promised: Promised }) {
  const answer = useTrialFindings(useClassroom(), useArrangement().id, promised);
  if (!answer) return <p className="aside">The room is being judged with {promised.count === 1 ? 'her' : 'them'} in it …</p>;
  if ('failure' in answer)
    return <p className="aside">What the checks say with them could not be worked out ({answer.failure}). The figures below stand.</p>;
  const { must, should } = answer.found;
  const fresh = [
    ...must.fresh.map((message) => ({ severity: 'Must', message })),
    ...should.fresh.map((message) => ({ severity: 'Should', message })),
  ];
  return (
    <>
      <p role="status" className="trial-said">
        {sayTrialFindings(answer.found, promised.count)}
      </p>
      {fresh.length > 0 && (
        <details className="trial-fresh">
          <summary>Which ones</summary>
          <ul>
            {inPlace(fresh).map(({ place, entry: { severity, message } }) => (
              <li key={place}>
                <b>{severity}</b> {message}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

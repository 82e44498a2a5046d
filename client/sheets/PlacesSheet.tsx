import { Suspense, useState } from 'react';
import { SheetLayout } from '../frame/SheetLayout.tsx';
import { comparedOf } from '../places/comparedOf.ts';
import { FloorThatCounts } from '../places/FloorThatCounts.tsx';
import { LimitChart } from '../places/LimitChart.tsx';
import { areMatsProven, placesLineOf } from '../places/placesLine.ts';
import { sayBinding, statementOf } from '../places/statement.ts';
import { WhatToSettle } from '../places/WhatToSettle.tsx';
import { WhyRange } from '../places/WhyRange.tsx';
import { YearLine } from '../places/YearLine.tsx';
import { laterEntries } from '../places/yearSteps.ts';
import { useAside, useIsThinking, useReport, useSession, useViewOf } from '../session/hooks.ts';
import { sayDay } from '../text/sayDay.ts';
import { TextLink } from '../ui/TextLink.tsx';
import '../styles/places.css';
import { late } from '../ui/late.tsx';

const TrialDialog = late(() => import('../places/trial/TrialDialog.tsx').then((m) => m.TrialDialog));
const LicenceDialog = late(() => import('../places/licence/LicenceDialog.tsx').then((m) => m.LicenceDialog));

/** How many children the room takes, by each way of asking. */
export function PlacesSheet() {
  const report = useReport();
  return (
    <SheetLayout
      mainName="Places"
      rightName="What to settle"
      main={<Limits />}
      right={report ? <WhatToSettle report={report} /> : <p className="waiting-words">Being worked out …</p>}
    />
  );
}

function Limits() {
  const report = useReport();
  const line = placesLineOf(report);
  const { places: sets } = useAside();
  const session = useSession();
  const compared = useViewOf('compared');
  const isThinking = useIsThinking();
  const [opened, setOpened] = useState<'trial' | 'licence' | null>(null);
  if (!line || !sets)
    return <p className="waiting-words">{isThinking ? 'The places are being worked out …' : 'The places could not be worked out.'}</p>;
  const inForce = sets[0] ?? null;
  const other = comparedOf(sets, compared);
  const latest = laterEntries(line.year, new Date()).at(-1);

  return (
    <>
      <section className="places-top" aria-labelledby="places-statement">
        <h2 className="statement" id="places-statement">
          {statementOf(line, areMatsProven(report))}
        </h2>
        <p className="aside">
          {inForce && `${sayBinding(line, areMatsProven(report), inForce.rules.name).join(' ')} `}
          <WhyRange line={line} />
          {latest && latest.children !== line.enrolled ? `${latest.children} are promised from ${sayDay(latest.from)}. ` : ''}
          Each line below is one way of asking how many.{isThinking && ' Still looking …'}
        </p>
        {inForce && (
          <div className="verbs places-verbs">
            <TextLink onPress={() => setOpened('trial')}>If a child came</TextLink>
            <TextLink onPress={() => setOpened('licence')}>Licence sheet</TextLink>
          </div>
        )}
        <LimitChart line={line} inForce={inForce} other={other} />
      </section>
      <div className="places-bottom">
        {inForce && <FloorThatCounts sets={sets} inForce={inForce} other={other} onCompare={(id) => session.setView({ compared: id })} />}
        <YearLine line={line} />
      </div>
      <Suspense fallback={null}>
        {inForce && opened === 'trial' && <TrialDialog inForce={inForce} byWork={line.byWork} onClose={() => setOpened(null)} />}
        {inForce && opened === 'licence' && (
          <LicenceDialog inForce={inForce} line={line} isThinking={isThinking} onClose={() => setOpened(null)} />
        )}
      </Suspense>
    </>
  );
}

import { useState } from 'react';
import type { Finding } from '#model/findings/finding.ts';
import { sourceText } from '#model/standards/sources.ts';
import { doFix } from '../checks/doFix.ts';
import { fixWords } from '../checks/fixWords.ts';
import { LeaveForm } from '../checks/LeaveForm.tsx';
import { LeftBefore } from '../checks/LeftBefore.tsx';
import { sayFigures } from '../checks/sayFigures.ts';
import { WhyLink } from '../checks/WhyLink.tsx';
import { useMayChange, useReport, useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { placesLineOf } from './placesLine.ts';
import { WhyRange } from './WhyRange.tsx';

/** One thing to settle, with its figures, reason and source written out. */
export function SettleCard({ finding }: { finding: Finding }) {
  const session = useSession();
  const units = useUnits();
  const line = placesLineOf(useReport());
  const [isLeaving, setLeaving] = useState(false);
  const mayChange = useMayChange();
  const words = mayChange && finding.fix ? fixWords(finding.fix.label) : null;
  const figures = sayFigures(finding.measured, finding.needed, units);
  return (
    <li className="settle-card">
      <SeverityWord severity={finding.severity} />
      <h3>{finding.message}</h3>
      {figures && finding.needed && (
        <p>
          <b>{figures.measured}</b>
          {figures.needed && `, ${figures.needed}`}
        </p>
      )}
      {finding.rule === 'places/area' && line && (
        <p>
          <WhyRange line={line} />
        </p>
      )}
      <LeftBefore finding={finding} />
      <p>{finding.why}</p>
      <p className="aside">{finding.sources.map(sourceText).join('; ')}</p>
      {isLeaving ? (
        <LeaveForm keys={[finding.key]} onClose={() => setLeaving(false)} />
      ) : (
        <div className="verbs">
          {words?.brings && <p className="aside brings">{words.brings}</p>}
          {words && (
            <Button kind="strong" onPress={() => doFix(session, finding)}>
              {words.button}
            </Button>
          )}
          {mayChange && <TextLink onPress={() => setLeaving(true)}>Leave it</TextLink>}
          <WhyLink rule={finding.rule} about={finding.message} />
        </div>
      )}
    </li>
  );
}

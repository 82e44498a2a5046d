import { memo, Suspense, useEffect, useRef, useState } from 'react';
import type { FindingGroup } from '#model/analysis/groupFindings.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { useMayChange, useSession } from '../session/hooks.ts';
import type { Session } from '../session/types.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { Button } from '../ui/Button.tsx';
import { comeBackTo, keepInSight } from '../ui/keepInSight.ts';
import { late } from '../ui/late.tsx';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { doFix } from './doFix.ts';
import { fixWords } from './fixWords.ts';
import { Gauge } from './Gauge.tsx';
import { LeaveForm } from './LeaveForm.tsx';
import { leadSentence } from './leadSentence.ts';
import { pencilWhileLooking } from './pencilWhileLooking.ts';
import { pointOut } from './pointOut.ts';
import { type Figures, sayFigures } from './sayFigures.ts';
import { shortMessage } from './shortMessage.ts';
import { showFinding } from './showFinding.ts';
import { WhyLink } from './WhyLink.tsx';

const loadKneel = () => import('./KneelLink.tsx');
const KneelLink = late(() => loadKneel().then((m) => m.KneelLink));
fetchWhenQuiet(loadKneel);

interface Props {
  readonly group: FindingGroup;
  readonly isShown: boolean;
  /** "a, b": the letters of its sources */
  readonly refs: string;
  /** "at B6: shelf 12": where it is on the plan; "": nowhere in particular */
  readonly where: string;
  readonly units: LengthUnits;
}

/** One finding: short until it is chosen, then with gauge, reason and what can be done. Drawn again only when it says something else. */
export const FindingItem = memo(function FindingItem({ group, isShown, refs, where, units }: Props) {
  const { lead: finding, others } = group;
  const session = useSession();
  const [isLeaving, setLeaving] = useState(false);
  const figures = sayFigures(finding.measured, finding.needed, units);
  const item = useRef<HTMLLIElement>(null);
  const wasShown = useRef(isShown);
  // Where parts take turns the checks come back at the finding that was looked at.
  useEffect(() => {
    if (wasShown.current && item.current?.closest('.phone, .swapped')) return comeBackTo(item.current);
  }, []);
  useEffect(() => {
    if ((isShown || isLeaving) && item.current) keepInSight(item.current);
  }, [isShown, isLeaving]);

  return (
    <li ref={item} className={isShown ? 'finding shown' : 'finding'}>
      <button
        type="button"
        className="finding-head"
        aria-expanded={isShown}
        onClick={() => (isShown ? session.setView({ finding: null }) : showFinding(session, finding))}
      >
        <span>
          <SeverityWord severity={finding.severity} />
          {refs !== '' && <span className="at">see {refs}</span>}
        </span>
        <span className="finding-text">
          <Message message={finding.message} figures={figures} />
          {(where !== '' || others.length > 0) && (
            <span className="at">
              {where}
              {others.length > 0 && `${where === '' ? '' : ', '}and ${others.length} more at the same place`}
            </span>
          )}
        </span>
        {figures && (
          <span className="finding-figures">
            <b className={finding.severity}>{figures.measured}</b>
            {figures.needed && <span className="aside">{figures.needed}</span>}
          </span>
        )}
      </button>
      {isShown && <Body group={group} figures={figures} />}
      {(isShown || finding.fix) && !isLeaving && <Verbs {...{ group, isShown }} onLeave={() => setLeaving(true)} />}
      {isLeaving && <LeaveForm keys={[finding, ...others].map(({ key }) => key)} onClose={() => setLeaving(false)} />}
    </li>
  );
}, saysTheSame);

function saysTheSame(before: Props, now: Props): boolean {
  const [p, q] = [before.group, now.group];
  return (
    before.isShown === now.isShown &&
    before.refs === now.refs &&
    before.where === now.where &&
    before.units === now.units &&
    p.lead === q.lead &&
    p.others.length === q.others.length &&
    p.others.every((other, i) => other === q.others[i])
  );
}

/** Short for the eye, which has the figures beside it; whole for the ear. */
function Message({ message, figures }: { message: string; figures: Figures | null }) {
  const short = shortMessage(message, figures);
  if (short === message) return <Sentences text={message} />;
  return (
    <>
      <span className="only-heard">{message}</span>
      <span aria-hidden="true">
        <Sentences text={short} />
      </span>
    </>
  );
}

/** What is wrong first, to be read at a glance; what else is said of it on lines of its own. */
function Sentences({ text }: { text: string }) {
  const [lead, rest] = leadSentence(text);
  return (
    <>
      <span className="lead">{lead}</span>
      {rest !== '' && <span className="rest"> {rest}</span>}
    </>
  );
}

function Body({ group: { lead: finding, others }, figures }: { group: FindingGroup; figures: Figures | null }) {
  const session = useSession();
  const { measured, needed } = finding;
  return (
    <div className="finding-body">
      {measured && needed && measured.unit === needed.unit && (
        <Gauge
          measured={measured.value}
          needed={needed.value}
          severity={finding.severity}
          label={[figures?.measured, figures?.needed].filter(Boolean).join(', ')}
        />
      )}
      <p>{finding.why}</p>
      {others.length > 0 && (
        <p className="aside">
          At the same place also: {[...new Set(others.map((other) => nameOf(other.subjects[0], session)))].join(', ')}.
        </p>
      )}
    </div>
  );
}

function Verbs({ group: { lead: finding }, isShown, onLeave }: { group: FindingGroup; isShown: boolean; onLeave: () => void }) {
  const session = useSession();
  const mayChange = useMayChange();
  const fix = mayChange ? finding.fix : null;
  const words = fix && fixWords(fix.label);
  return (
    <div className="verbs">
      {words?.brings && <p className="aside brings">{words.brings}</p>}
      {words &&
        (isShown ? (
          <Button kind="strong" {...pencilWhileLooking(session, finding)} onPress={() => doFix(session, finding)}>
            {words.button}
          </Button>
        ) : (
          <TextLink
            aria-label={`${words.button}. ${words.brings ? `${words.brings} ` : ''}${finding.message}`}
            {...pencilWhileLooking(session, finding)}
            onPress={() => doFix(session, finding)}
          >
            Do it
          </TextLink>
        ))}
      {isShown && <TextLink onPress={() => pointOut(session, finding)}>Show</TextLink>}
      {isShown && mayChange && <TextLink onPress={onLeave}>Leave it</TextLink>}
      {isShown && finding.rule === 'reach/see' && (
        <Suspense fallback={null}>
          <KneelLink finding={finding} />
        </Suspense>
      )}
      {isShown && <WhyLink rule={finding.rule} about={finding.message} />}
    </div>
  );
}

function nameOf(id: string | undefined, session: Session): string {
  if (id === undefined) return '';
  const scene = session.scene();
  return (scene.bodyById.get(id)?.label ?? scene.materialById.get(id)?.name) || id;
}

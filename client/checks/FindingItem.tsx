import { useState } from 'react';
import type { FindingGroup } from '#model/analysis/groupFindings.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import type { Scene } from '#model/scene/types.ts';
import { sayQuantity } from '#model/units/quantity.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { cellAt } from '../plan/neatline.ts';
import { useScene, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { doFix } from './doFix.ts';
import { Gauge } from './Gauge.tsx';
import { LeaveForm } from './LeaveForm.tsx';
import { pencilWhileLooking } from './pencilWhileLooking.ts';
import { showFinding } from './showFinding.ts';

interface Props {
  readonly group: FindingGroup;
  readonly isShown: boolean;
  readonly letters: ReadonlyMap<string, string>;
  readonly units: LengthUnits;
}

/** One finding: short until it is chosen, then with gauge, reason and what can be done. */
export function FindingItem({ group, isShown, letters, units }: Props) {
  const { lead: finding, others } = group;
  const session = useSession();
  const scene = useScene();
  const [isLeaving, setLeaving] = useState(false);
  const { measured, needed, severity } = finding;
  const at = finding.at ? cellAt(finding.at, boundingBox(scene.room.outline)) : null;
  const near = needed && measured && needed.unit === measured.unit ? needed.value : undefined;
  const refs = finding.sources.flatMap((source) => letters.get(source) ?? []);

  return (
    <li className={isShown ? 'finding shown' : 'finding'}>
      <button
        type="button"
        className="finding-head"
        aria-expanded={isShown}
        onClick={() => (isShown ? session.setView({ finding: null }) : showFinding(session, finding))}
      >
        <span>
          <SeverityWord severity={severity} />
          {refs.length > 0 && <span className="at">see {refs.join(', ')}</span>}
        </span>
        <span className="finding-text">
          {finding.message}
          {(at || others.length > 0) && (
            <span className="at">
              {at && `at ${at}`}
              {others.length > 0 && `${at ? ', ' : ''}and ${others.length} more at the same place`}
            </span>
          )}
        </span>
        {measured && (
          <span className="finding-figures">
            <b className={severity}>{sayQuantity(measured, units, near)}</b>
            {needed && <span className="aside">{sayQuantity(needed, units)} needed</span>}
          </span>
        )}
      </button>
      {isShown && (
        <div className="finding-body">
          {measured && needed && measured.unit === needed.unit && (
            <Gauge
              measured={measured.value}
              needed={needed.value}
              severity={severity}
              label={`${sayQuantity(measured, units, near)} measured, ${sayQuantity(needed, units)} needed`}
            />
          )}
          <p>{finding.why}</p>
          {others.length > 0 && (
            <p className="aside">
              At the same place also: {[...new Set(others.map((other) => nameOf(other.subjects[0], scene)))].join(', ')}.
            </p>
          )}
        </div>
      )}
      {(isShown || finding.fix) && !isLeaving && (
        <div className="verbs">
          {finding.fix &&
            (isShown ? (
              <Button kind="strong" {...pencilWhileLooking(session, finding)} onPress={() => doFix(session, finding)}>
                {fixWords(finding.fix.label)}
              </Button>
            ) : (
              <TextLink
                aria-label={`${fixWords(finding.fix.label)}. ${finding.message}`}
                {...pencilWhileLooking(session, finding)}
                onPress={() => doFix(session, finding)}
              >
                Do it
              </TextLink>
            ))}
          {isShown && <TextLink onPress={() => showFinding(session, finding)}>Show</TextLink>}
          {isShown && <TextLink onPress={() => setLeaving(true)}>Leave it</TextLink>}
        </div>
      )}
      {isLeaving && <LeaveForm keys={[finding, ...others].map(({ key }) => key)} onClose={() => setLeaving(false)} />}
    </li>
  );
}

const nameOf = (id: string | undefined, scene: Scene): string =>
  (id !== undefined && (scene.bodyById.get(id)?.label ?? scene.materialById.get(id)?.name)) || (id ?? '');

/** Some rules write "Do it: …" themselves. */
const fixWords = (label: string): string => (label.startsWith('Do it') ? label : `Do it: ${label}`);

import { Suspense, useState } from 'react';
import type { Scene } from '#model/scene/types.ts';
import { PracticalLifeWords } from '../../checks/PracticalLifeWords.tsx';
import { WhyLink } from '../../checks/WhyLink.tsx';
import { frontActions } from '../../front/frontActions.ts';
import { sayStep } from '../../front/frontLayout.ts';
import { orderMoves } from '../../front/orderMoves.ts';
import { isStepJudged } from '../../front/practicalLife.ts';
import { checksBySubject } from '../../lists/trayChecks.ts';
import { useReport, useSession } from '../../session/hooks.ts';
import { MayChange } from '../../session/MayChange.tsx';
import { capital } from '../../text/sayList.ts';
import { late } from '../../ui/late.tsx';
import { SeverityWord } from '../../ui/SeverityMark.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { FitList } from './FitList.tsx';
import { MaterialEditor } from './MaterialEditor.tsx';
import { MaterialFacts, MaterialTop } from './MaterialFacts.tsx';
import { sayWhereabouts } from './sayWhereabouts.ts';
import { showOnPlan } from './showOnPlan.ts';
import { areaKey, areaTitle } from './threads.ts';
import { whereaboutsOf } from './whereabouts.ts';

const KneelDialog = late(() => import('../../front/kneel/KneelDialog.tsx').then((m) => m.KneelDialog));

/** The right column: the chosen material, where it would fit, and its values. */
export function MaterialPanel({ scene, id }: { scene: Scene; id: string | null }) {
  const session = useSession();
  const report = useReport();
  const checks = checksBySubject(report);
  const [isKneeling, setKneeling] = useState(false);
  const material = id === null ? undefined : scene.materialById.get(id);
  if (!material) {
    return (
      <div className="material-panel">
        <div className="panel-head">
          <h2>No material chosen</h2>
        </div>
        <p className="aside">
          Choose one in the table or on a thread: what it comes after, how sure its values are and where it would fit are said here.
        </p>
      </div>
    );
  }
  const at = whereaboutsOf(scene).get(material.id) ?? { at: 'none' as const };
  const isPlaced = at.at === 'board' || at.at === 'room';
  const isInStep =
    at.at === 'board' &&
    report !== null &&
    isStepJudged(scene, material) &&
    !orderMoves(report, scene).has(material.id) &&
    !(checks.get(material.id) ?? []).some(({ rule }) => rule.startsWith('order/') || rule.startsWith('reach/'));
  const remarks = scene.classroom.notes.filter((note) => note.on === material.id && !note.done);
  const step = sayStep(material.step);
  // First of all for what is on the table: it is what the person came for, and a tablet shows little of the panel.
  const fits = material.stands !== 'none' && (
    <>
      <div className="panel-head">
        <h3>{isPlaced ? 'Where else would it fit?' : 'Where would it fit?'}</h3>
      </div>
      <FitList scene={scene} material={material} isInStep={isInStep} />
    </>
  );
  return (
    <div className="material-panel" key={material.id}>
      <div className="panel-head">
        <h2>{material.name}</h2>
        <span className="aside">
          {areaTitle(areaKey(material))}
          {material.strand === '' ? '' : `, ${material.strand}`}
          {step === '' ? '' : `, step ${step}`}
        </span>
      </div>
      {!isPlaced && fits}
      <MaterialTop scene={scene} material={material} stands={capital(sayWhereabouts(scene, material, at))} />
      {(checks.get(material.id) ?? []).map((finding) => (
        <p key={finding.key} className="material-finding">
          <SeverityWord severity={finding.severity} /> {finding.message} <WhyLink rule={finding.rule} about={finding.message} />
        </p>
      ))}
      {!isStepJudged(scene, material) && material.stands !== 'none' && <PracticalLifeWords />}
      {isPlaced && (
        <div className="verbs">
          <TextLink onPress={() => showOnPlan(session, material)}>Show on the plan</TextLink>
          {at.at === 'board' && <TextLink onPress={() => setKneeling(true)}>Kneel here</TextLink>}
          <MayChange>
            <TextLink onPress={() => frontActions(session).putAway(material.id)}>Put away</TextLink>
          </MayChange>
        </div>
      )}
      {isPlaced && fits}
      {remarks.length > 0 && (
        <>
          <div className="panel-head">
            <h3>Remarks</h3>
          </div>
          {remarks.map((note) => (
            <p key={note.id}>
              {note.by !== '' && <b>{note.by} </b>}
              {note.text}
            </p>
          ))}
        </>
      )}
      <div className="panel-head">
        <h3>What is known of it</h3>
      </div>
      <MaterialFacts material={material} />
      <MayChange>
        <MaterialEditor material={material} materials={scene.classroom.materials} />
      </MayChange>
      {isKneeling && at.at === 'board' && (
        <Suspense fallback={null}>
          <KneelDialog scene={scene} side={at.side} material={material.id} onClose={() => setKneeling(false)} />
        </Suspense>
      )}
    </div>
  );
}

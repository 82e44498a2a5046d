import { lazy, Suspense } from 'react';
import { StartDialogs } from '../start/StartDialogs.tsx';
import { useFrameDialogs } from './frameDialogs.ts';

const ClassDialog = lazy(() => import('../settings/ClassDialog.tsx').then((m) => ({ default: m.ClassDialog })));
const SurveyDialog = lazy(() => import('../survey/SurveyDialog.tsx').then((m) => ({ default: m.SurveyDialog })));
const RulePageDialog = lazy(() => import('../pages/RulePageDialog.tsx').then((m) => ({ default: m.RulePageDialog })));
const MeDialog = lazy(() => import('./MeDialog.tsx').then((m) => ({ default: m.MeDialog })));
const ShareDialog = lazy(() => import('./ShareDialog.tsx').then((m) => ({ default: m.ShareDialog })));
const PrintDialog = lazy(() => import('../print/PrintDialog.tsx').then((m) => ({ default: m.PrintDialog })));

/** The dialogs of an opened classroom; each is fetched when it is first shown. */
export function FrameDialogSet() {
  const { shown, page, openPage, close } = useFrameDialogs();
  return (
    <Suspense fallback={null}>
      {shown === 'class' && <ClassDialog onClose={close} />}
      {shown === 'share' && <ShareDialog onClose={close} />}
      {shown === 'me' && <MeDialog onClose={close} />}
      {shown === 'print' && <PrintDialog onClose={close} />}
      {shown === 'survey' && <SurveyDialog onClose={close} />}
      {page !== null && <RulePageDialog rule={page} onRule={openPage} onClose={close} />}
      <StartDialogs />
    </Suspense>
  );
}

import { Suspense } from 'react';
import { StartDialogs } from '../start/StartDialogs.tsx';
import { late } from '../ui/late.tsx';
import { useFrameDialogs } from './frameDialogs.ts';

const ClassDialog = late(() => import('../settings/ClassDialog.tsx').then((m) => m.ClassDialog));
const SurveyDialog = late(() => import('../survey/SurveyDialog.tsx').then((m) => m.SurveyDialog));
const RulePageDialog = late(() => import('../pages/RulePageDialog.tsx').then((m) => m.RulePageDialog));
const MeDialog = late(() => import('./MeDialog.tsx').then((m) => m.MeDialog));
const ShareDialog = late(() => import('./ShareDialog.tsx').then((m) => m.ShareDialog));
const KeysDialog = late(() => import('../plan/KeysDialog.tsx').then((m) => m.KeysDialog));
const PrintDialog = late(() => import('../print/PrintDialog.tsx').then((m) => m.PrintDialog));

/** The dialogs of an opened classroom; each is fetched when it is first shown. */
export function FrameDialogSet() {
  const { shown, page, openPage, close } = useFrameDialogs();
  return (
    <Suspense fallback={null}>
      {shown === 'class' && <ClassDialog onClose={close} />}
      {shown === 'share' && <ShareDialog onClose={close} />}
      {shown === 'me' && <MeDialog onClose={close} />}
      {shown === 'keys' && <KeysDialog onClose={close} />}
      {shown === 'print' && <PrintDialog onClose={close} />}
      {shown === 'survey' && <SurveyDialog onClose={close} />}
      {page !== null && <RulePageDialog rule={page} onRule={openPage} onClose={close} />}
      <StartDialogs />
    </Suspense>
  );
}

import { figuresAtDesk } from '../moveDay/figuresAtDesk.ts';
import type { MoveQuestion } from '../moveDay/messages.ts';
import { judgePage } from '../pages/judgePage.ts';
import type { PageQuestion } from '../pages/messages.ts';
import { type TrialQuestion, tryAtDesk } from '../places/trial/trialDesk.ts';
import { deskOf } from './deskOf.ts';
import type { Cancel, Question } from './messages.ts';
import { scope } from './scope.ts';
import { reportSender } from './sentReport.ts';

const desk = deskOf();
const send = reportSender();
// A page of a check asks a worker of its own, of the same make, and so do the move day and a trial: the checks are sent to a browser once.
scope.onmessage = async (event: MessageEvent<Question | Cancel | PageQuestion | MoveQuestion | TrialQuestion>) => {
  if ('move' in event.data) {
    figuresAtDesk(event.data, (answer) => scope.postMessage(answer));
    return;
  }
  if ('promised' in event.data) {
    scope.postMessage(tryAtDesk(event.data));
    return;
  }
  if ('rooms' in event.data) {
    scope.postMessage(judgePage(event.data));
    return;
  }
  const answer = await desk(event.data);
  if (answer) scope.postMessage('failure' in answer ? answer : { ...answer, report: send(answer.report) });
};

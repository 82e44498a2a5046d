import { deskOf } from './deskOf.ts';
import type { Cancel, Question } from './messages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const desk = deskOf();
scope.onmessage = async (event: MessageEvent<Question | Cancel>) => {
  const answer = await desk(event.data);
  if (answer) scope.postMessage(answer);
};

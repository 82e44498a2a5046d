import { deskOf } from './deskOf.ts';
import type { Answer, Failure, Question } from './messages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const desk = deskOf((message: Answer | Failure) => scope.postMessage(message));
scope.onmessage = (event: MessageEvent<Question>) => desk.take(event.data);

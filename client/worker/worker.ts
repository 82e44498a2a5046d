import { deskOf } from './deskOf.ts';
import type { Question } from './messages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const answer = deskOf();
scope.onmessage = (event: MessageEvent<Question>) => scope.postMessage(answer(event.data));

import { lookForMend } from './mendDesk.ts';
import type { MendQuestion } from './mendMessages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
scope.onmessage = (event: MessageEvent<MendQuestion>) => lookForMend(event.data, (answer) => scope.postMessage(answer));

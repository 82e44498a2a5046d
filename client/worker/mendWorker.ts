import { lookForMend } from './mendDesk.ts';
import type { MendQuestion } from './mendMessages.ts';
import { scope } from './scope.ts';

scope.onmessage = (event: MessageEvent<MendQuestion>) => lookForMend(event.data, (answer) => scope.postMessage(answer));

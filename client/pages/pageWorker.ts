import { judgePage } from './judgePage.ts';
import type { PageQuestion } from './messages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
scope.onmessage = (event: MessageEvent<PageQuestion>) => scope.postMessage(judgePage(event.data));

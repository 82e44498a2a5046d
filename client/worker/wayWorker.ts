import { measureWay, type WayQuestion } from './wayDesk.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
scope.onmessage = (event: MessageEvent<WayQuestion>) => scope.postMessage(measureWay(event.data));

import { scope } from './scope.ts';
import { measureWay, type WayQuestion } from './wayDesk.ts';

scope.onmessage = (event: MessageEvent<WayQuestion>) => scope.postMessage(measureWay(event.data));

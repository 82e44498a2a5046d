import loadHighs from 'highs';
import solverFile from 'highs/runtime?url';
import { pickWith } from '#model/geometry/pickMost.ts';
import { proveAtDesk } from './proofDesk.ts';
import type { ProofQuestion } from './proofMessages.ts';
import { scope } from './scope.ts';

const loadPick = async () => pickWith(await loadHighs({ locateFile: () => solverFile }));
scope.onmessage = (event: MessageEvent<ProofQuestion>) => proveAtDesk(event.data, loadPick, (answer) => scope.postMessage(answer));

/** What the bench times of the analyser, in one module so that it is bundled once. */
export { benchRoom, demoRoom } from './benchRoom.ts';
export { liveTierTimes } from './liveTier.ts';
export { matsRace } from './matsRace.ts';
export { settleTimes } from './settleTier.ts';
export { waysRace } from './waysRace.ts';

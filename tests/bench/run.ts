import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { loadBundled } from './bundled.ts';
import { timeToDrawnPlan } from './drawnPlan.ts';
import { firstLoadBytes } from './firstLoad.ts';
import { percentiles, type Times } from './percentiles.ts';

/** `npm run bench`: the figures that the project reports, on this machine, now. */
const say = (name: string, times: Times, unit = 'ms'): void =>
  console.log(`${name.padEnd(44)} p50 ${times.p50.toFixed(1)} ${unit}   p95 ${times.p95.toFixed(1)} ${unit}   (${times.runs} runs)`);

const { liveTierTimes } = await loadBundled<typeof import('./liveTier.ts')>('liveTier.ts');
say('live tier, 60 pieces', liveTierTimes('bench-60', 200));
say('live tier, 400 pieces', liveTierTimes('bench-400', 40));

execFileSync('npm', ['run', '-s', 'build'], { cwd: resolve(import.meta.dirname, '../..'), stdio: 'inherit' });
const load = await firstLoadBytes();
const kB = (bytes: number): string => `${(bytes / 1000).toFixed(0)} kB gz`;
console.log(`${'first load, until the plan is drawn'.padEnd(44)} ${kB(load.untilDrawn)}`);
console.log(
  `${'first load, the whole Room sheet'.padEnd(44)} ${kB(load.inAll)} (demo data ${kB(load.demo)}; worker apart ${kB(load.worker)})`,
);

const plan = await timeToDrawnPlan(5);
say('navigation to drawn plan, cold', percentiles(plan.cold));
say('navigation to drawn plan, warm', percentiles(plan.warm));

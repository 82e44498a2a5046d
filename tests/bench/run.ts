import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { loadBundled } from './bundled.ts';
import { type DragFrames, dragFrames } from './dragFrames.ts';
import { timeToDrawnPlan } from './drawnPlan.ts';
import { firstLoadBytes } from './firstLoad.ts';
import { percentiles, type Times } from './percentiles.ts';

/** `npm run bench`: the figures that the project reports, on this machine, now. They mean something only where nothing else runs. */
const say = (name: string, times: Times, unit = 'ms'): void =>
  console.log(`${name.padEnd(44)} p50 ${times.p50.toFixed(1)} ${unit}   p95 ${times.p95.toFixed(1)} ${unit}   (${times.runs} runs)`);

/** Against what the project promises itself. */
const held = (isHeld: boolean, promise: string): string => `${isHeld ? 'held' : 'NOT held'}: ${promise}`;

const { benchRoom, demoRoom, liveTierTimes, matsRace, settleTimes, waysRace } =
  await loadBundled<typeof import('./analyser.ts')>('analyser.ts');
const [small, large] = [benchRoom('bench-60'), benchRoom('bench-400')];

const live = { small: liveTierTimes(small, 1000), large: liveTierTimes(large, 500) };
say('live tier following a drag, 60 pieces', live.small.following);
say('  each place at its least', live.small.unhindered);
say('live tier following a drag, 400 pieces', live.large.following);
say('  each place at its least', live.large.unhindered);
say('live tier from the start, 60 pieces', live.small.fromTheStart);
say('live tier from the start, 400 pieces', live.large.fromTheStart);
const demo = demoRoom();
const demoLive = liveTierTimes(demo, 200);
say(`live tier following a drag, the demo room`, demoLive.following);
say(`live tier from the start, the demo room`, demoLive.fromTheStart);
const growth = (of: 'following' | 'fromTheStart'): number => live.large[of].p50 / live.small[of].p50;
console.log(
  `growth from 60 to 400 pieces (6.7 times)       ${growth('following').toFixed(1)} times following, ${growth('fromTheStart').toFixed(1)} times from the start`,
);

const settle = settleTimes(small);
say('sight from 3 eyes, 60 pieces', settle.sight);
say('farthest walks out, 60 pieces', settle.exits);
const settleDemo = settleTimes(demo);
say('sight from 3 eyes, the demo room', settleDemo.sight);
say('farthest walks out, the demo room', settleDemo.exits);

const race = waysRace(small);
const times = race.bisection / race.ours.p50;
say(`${race.ways} ways up to 915 mm by gaps, 60 pieces`, race.ours);
console.log(`the same by bisection on clipper2 offsets      ${race.bisection.toFixed(0)} ms to 0.15 mm: ${times.toFixed(0)} times as long`);
for (const line of race.apart) console.log(`  the two differ: ${line}`);

const rooms = Array.from({ length: 12 }, (_, k) => benchRoom(`room-${String(k + 1).padStart(2, '0')}`));
const sayLaid = (name: string, { mats, of }: { mats: ReturnType<typeof matsRace>; of: 'quick' | 'better' | 'raster' }): void =>
  console.log(`${name.padEnd(44)} ${mats[of].count} mats, ${mats[of].took.toFixed(1)} ms a room`);
const mats = matsRace(rooms);
sayLaid('mats of 12 rooms, quick', { mats, of: 'quick' });
sayLaid('mats of 12 rooms, the search behind it', { mats, of: 'better' });
sayLaid('the same one by one on a raster of 150 mm', { mats, of: 'raster' });
console.log(`no more than ${mats.most} by area; what is proven stands in tests/reference/matProof.test.ts`);
const demoMats = matsRace([demo]);
for (const of of ['quick', 'better', 'raster'] as const) sayLaid(`mats of the demo room, ${of}`, { mats: demoMats, of });

for (const line of [
  held(live.small.following.p95 <= 8, 'live tier of 60 pieces, p95 at most 8 ms'),
  held(live.large.following.p95 <= 40, 'live tier of 400 pieces, p95 at most 40 ms'),
  held(growth('fromTheStart') <= 8 && growth('following') <= 8, 'growth from 60 to 400 pieces at most 8 times'),
  held(demoLive.following.p95 <= 8, 'live tier of the demo room, p95 at most 8 ms'),
  held(mats.quick.took <= 5, 'quick mats of the 12 rooms in 5 ms a room'),
  held(settle.sight.p95 <= 10, 'sight from 3 eyes at most 10 ms at 60 pieces'),
  held(settle.exits.p95 <= 30, 'farthest walks out at most 30 ms at 60 pieces'),
  held(settle.exitWithin <= 0.001 + 1e-9, `farthest walks known to ${settle.exitWithin.toFixed(4)} mm`),
  held(times >= 50 && race.apart.length === 0, 'ways at least 50 times as fast as bisection, with the same answers'),
])
  console.log(line);

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

/** Minutes of dragging instead of seconds tell whether memory stays flat. */
const seconds = Number(process.env.LOWSHELF_DRAG ?? 8);
const drags = await dragFrames(seconds);
const sayDrag = (name: string, { work, longest, late, heap }: DragFrames): void => {
  say(`${name}, main thread a frame`, work);
  const [before, after] = heap.map((bytes) => (bytes / 1e6).toFixed(1));
  console.log(
    `${''.padEnd(44)} longest task ${longest.toFixed(0)} ms, ${(late * 100).toFixed(1)} % of frames late, heap ${before} to ${after} MB`,
  );
};
sayDrag('moving over an empty canvas', drags.empty);
sayDrag('dragging a shelf, demo', drags.demo);
sayDrag('dragging a shelf, 400 pieces', drags.large);
for (const line of [
  held(drags.demo.work.p95 <= 8, 'demo, p95 at most 8 ms'),
  held(drags.large.work.p95 <= 16, '400 pieces, p95 at most 16 ms'),
  held(drags.demo.longest <= 50 && drags.large.longest <= 50, 'no task over 50 ms'),
  held(drags.demo.late - drags.empty.late <= 0.02, 'demo, at most 2 % late beyond the empty canvas'),
  held(drags.large.late - drags.empty.late <= 0.1, '400 pieces, at most 10 % late beyond the empty canvas'),
])
  console.log(line);

import type { SceneTray } from '../../scene/types.ts';

/** Trays of one strand that follow one another without another strand between them. */
export interface StrandRun {
  readonly strand: string;
  readonly trays: readonly SceneTray[];
}

/** Runs in reading order. Trays of no strand belong to none and cut none. */
export function strandRuns(reading: readonly SceneTray[]): StrandRun[] {
  const runs: { strand: string; trays: SceneTray[] }[] = [];
  for (const tray of reading) {
    const strand = tray.material.strand.trim();
    if (strand === '') continue;
    const last = runs.at(-1);
    if (last?.strand === strand) last.trays.push(tray);
    else runs.push({ strand, trays: [tray] });
  }
  return runs;
}

/** A strand that another one cuts into pieces. */
export interface CutStrand {
  readonly strand: string;
  /** The largest run; with ties the first. */
  readonly main: StrandRun;
  /** Trays that stand apart from it, in reading order. */
  readonly apart: readonly SceneTray[];
  /** Strands that stand between its runs without having to, in reading order. */
  readonly by: readonly string[];
}

/** Whether one tray has to come before another. */
export type IsBefore = (first: SceneTray, second: SceneTray) => boolean;

/**
 * Every strand in more than one run, in the order in which it begins. What has to come after something of the strand and
 * before something else of it does not cut it.
 */
export function cutStrands(runs: readonly StrandRun[], isBefore: IsBefore): CutStrand[] {
  const strands = [...new Set(runs.map(({ strand }) => strand))];
  return strands.flatMap((strand): CutStrand[] => {
    const mine = runs.filter((run) => run.strand === strand);
    const [first] = mine;
    if (!first || mine.length === 1) return [];
    const main = mine.reduce((best, run) => (run.trays.length > best.trays.length ? run : best), first);
    const between = runs.slice(runs.indexOf(first), runs.lastIndexOf(mine[mine.length - 1] ?? first));
    const own = mine.flatMap((run) => run.trays);
    const hasToBe = (tray: SceneTray): boolean => own.some((early) => isBefore(early, tray)) && own.some((late) => isBefore(tray, late));
    const cutting = between.filter((run) => run.strand !== strand && !run.trays.every(hasToBe));
    if (cutting.length === 0) return [];
    return [
      {
        strand,
        main,
        apart: mine.filter((run) => run !== main).flatMap((run) => run.trays),
        by: [...new Set(cutting.map((run) => run.strand))],
      },
    ];
  });
}

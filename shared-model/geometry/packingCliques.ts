import { boxHolds, type FrameBox } from './packingCells.ts';
import { type Point, turn } from './vec.ts';

/** A box with the turn of its frame, degrees; null: it covers nothing. */
export type Core = (FrameBox & { readonly frame: number }) | null;

/**
 * Sets of boxes that share a point of the plan: of the places behind them no two go together. For boxes of one frame
 * every set of boxes that meet one another is within one of those returned; across frames some are missed. None is within
 * another. Lists of indices, ascending.
 */
export function cliquesOf(cores: readonly Core[]): number[][] {
  const frames = new Map<number, number[]>();
  cores.forEach((core, k) => {
    if (!core) return;
    const members = frames.get(core.frame);
    if (members) members.push(k);
    else frames.set(core.frame, [k]);
  });
  const found: number[][] = [];
  for (const [frame, members] of frames) {
    const others = [...frames].filter(([other]) => other !== frame);
    sweep(cores, members, (set, at) => {
      const beside = others.flatMap(([other, list]) => {
        const seen = turn(turn(at, frame), -other);
        return list.filter((k) => boxHolds(cores[k] as FrameBox, seen));
      });
      if (set.length + beside.length > 1) found.push([...set, ...beside].sort((p, q) => p - q));
    });
  }
  return largest(found);
}

/** Every corner made by one box's low u and one's low v at which a box ends next: no set at another corner is larger. */
function sweep(cores: readonly Core[], members: readonly number[], take: (set: number[], at: Point) => void): void {
  const box = (k: number): FrameBox => cores[k] as FrameBox;
  const byU = [...members].sort((p, q) => box(p).minU - box(q).minU);
  const byV = [...members].sort((p, q) => box(p).minV - box(q).minV);
  byU.forEach((owner, i) => {
    const u = box(owner).minU;
    const open = byV.filter((k) => box(k).minU <= u && box(k).maxU > u);
    const nextU = i + 1 < byU.length ? box(byU[i + 1] as number).minU : Infinity;
    // A box that begins before any ends makes a larger set at its own corner.
    if (open.every((k) => box(k).maxU > nextU)) return;
    open.forEach((top, j) => {
      const v = box(top).minV;
      const nextV = j + 1 < open.length ? box(open[j + 1] as number).minV : Infinity;
      const set = open.filter((k) => box(k).minV <= v && box(k).maxV > v);
      if (set.every((k) => box(k).maxV > nextV)) return;
      take(set, { x: u, y: v });
    });
  });
}

/** Those within no other. */
function largest(sets: readonly number[][]): number[][] {
  const ordered = [...sets].sort((p, q) => q.length - p.length);
  const kept: number[][] = [];
  const byMember = new Map<number, Set<number>[]>();
  for (const set of ordered) {
    const rarest = set.map((k) => byMember.get(k) ?? []).reduce((p, q) => (q.length < p.length ? q : p));
    if (rarest.some((other) => set.every((k) => other.has(k)))) continue;
    kept.push(set);
    const members = new Set(set);
    for (const k of set) {
      const list = byMember.get(k);
      if (list) list.push(members);
      else byMember.set(k, [members]);
    }
  }
  return kept;
}

import type { Scene, SceneTray } from '../../scene/types.ts';
import type { Material } from '../../schema/types.ts';
import { type Grade, type OrderGraph, orderGraph } from './graph.ts';
import { readingOrder } from './reading.ts';

/** Which material has to come before which, closed over all materials; columns are positions in the reading order. */
export interface OrderRelation {
  readonly graph: OrderGraph;
  /** Placed trays in reading order; their index is their position. */
  readonly reading: readonly SceneTray[];
  /** Material id -> column: its position when it is read, else a column behind the last position. */
  readonly columnOf: ReadonlyMap<string, number>;
  readonly words: number;
  /** Row of a column: bits of every column that comes before it. */
  readonly before: Uint32Array;
  /** The same, told by published and own edges alone. */
  readonly surelyBefore: Uint32Array;
}

export function orderRelation(scene: Scene): OrderRelation {
  const { materials } = scene.classroom;
  const graph = orderGraph(materials);
  const reading = readingOrder(scene);
  const columnOf = new Map(reading.map((tray, position) => [tray.material.id, position]));
  for (const { id } of materials) if (!columnOf.has(id)) columnOf.set(id, columnOf.size);
  const columns = materials.map(({ id }) => columnOf.get(id) ?? -1);
  const words = Math.max(1, Math.ceil(columns.length / 32));
  const before = closeOver(graph, columns, words, 1);
  const isAllSure = graph.edges.inGrade.every((grade) => grade >= 2);
  return { graph, reading, columnOf, words, before, surelyBefore: isAllSure ? before : closeOver(graph, columns, words, 2) };
}

/** Ancestors of every material as bits, following edges of at least this grade. */
function closeOver({ edges, topological }: OrderGraph, columns: readonly number[], words: number, leastGrade: number): Uint32Array {
  const all = new Uint32Array(edges.nodeCount * words);
  const { inStart, from, inGrade } = edges;
  for (const node of topological) {
    const row = node * words;
    for (let i = inStart[node] as number; i < (inStart[node + 1] as number); i++) {
      if ((inGrade[i] as number) < leastGrade) continue;
      const parent = from[i] as number;
      const parentRow = parent * words;
      for (let w = 0; w < words; w++) all[row + w] = (all[row + w] as number) | (all[parentRow + w] as number);
      const column = columns[parent];
      if (column !== undefined) all[row + (column >>> 5)] = (all[row + (column >>> 5)] as number) | (1 << (column & 31));
    }
  }
  const rows = new Uint32Array(columns.length * words);
  columns.forEach((column, node) => {
    rows.set(all.subarray(node * words, (node + 1) * words), column * words);
  });
  return rows;
}

export const hasBit = (rows: Uint32Array, words: number, row: number, bit: number): boolean =>
  (((rows[row * words + (bit >>> 5)] as number) >>> (bit & 31)) & 1) === 1;

/** True when edges of at least this grade (3 published, 2 own too, 1 all) lead from one material of the class to another. */
export function isToldBy(
  { graph }: OrderRelation,
  materials: readonly Material[],
  first: string,
  second: string,
  leastGrade: Grade,
): boolean {
  const goal = materials.findIndex((m) => m.id === first);
  const seen = new Set([materials.findIndex((m) => m.id === second)]);
  const { inStart, from, inGrade } = graph.edges;
  for (const node of seen) {
    if (node === -1) return false;
    for (let i = inStart[node] as number; i < (inStart[node + 1] as number); i++) {
      if ((inGrade[i] as number) < leastGrade) continue;
      if (from[i] === goal) return true;
      seen.add(from[i] as number);
    }
  }
  return false;
}

/** Calls with every set bit of a row, ascending. */
export function forEachBit(rows: Uint32Array, words: number, row: number, call: (bit: number) => void): void {
  for (let w = 0; w < words; w++)
    for (let rest = rows[row * words + w] as number; rest !== 0; rest &= rest - 1) call(w * 32 + 31 - Math.clz32(rest & -rest));
}

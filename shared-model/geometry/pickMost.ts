import type { Highs } from 'highs';

/** Choose as many of `count` things as the limits allow. */
interface PickTask {
  readonly count: number;
  readonly limits: readonly PickLimit[];
  /** Fewer than this are of no interest. */
  readonly atLeast: number;
  /** Nodes of the search that may be opened: the work that is spent, counted, never timed. */
  readonly nodes: number;
}

/** Of these things no more than `most`. */
export interface PickLimit {
  readonly members: readonly number[];
  readonly most: number;
}

interface Picked {
  /** The largest choice found; null: none of `atLeast` or more was. */
  readonly members: readonly number[] | null;
  /** No choice is larger than this. */
  readonly bound: number;
}

export type PickMost = (task: PickTask) => Picked;

/** What a bound found in floating point may be short of the true one. */
const ROUNDING = 1e-6;

/** Picks with the mixed-integer solver: branch and cut, the same answer on every device. */
export function pickWith(highs: Highs): PickMost {
  const { constants } = highs;
  return ({ count, limits, atLeast, nodes }) => {
    if (count < atLeast) return { members: null, bound: atLeast - 1 };
    const all = Array.from({ length: count }, (_, k) => k);
    const rows = [...limits.map(({ members }) => members), all];
    const starts = [0];
    for (const row of rows) starts.push((starts.at(-1) as number) + row.length);
    const indices = rows.flat();
    const model = highs.createModel({
      numCols: count,
      numRows: rows.length,
      sense: constants.objectiveSense.maximize,
      colCost: all.map(() => 1),
      colLower: all.map(() => 0),
      colUpper: all.map(() => 1),
      rowLower: [...limits.map(() => -highs.infinity), atLeast],
      rowUpper: [...limits.map(({ most }) => most), highs.infinity],
      integrality: all.map(() => constants.variableType.integer),
      matrix: { format: 'csr', numRows: rows.length, numCols: count, starts, indices, values: indices.map(() => 1) },
    });
    try {
      model.options.set({ output_flag: false, mip_max_nodes: nodes, mip_rel_gap: 0, mip_abs_gap: 0.999 });
      model.run();
      const status = model.getModelStatus();
      if (status === constants.modelStatus.infeasible) return { members: null, bound: atLeast - 1 };
      const dual = Number(model.info.get('mip_dual_bound'));
      const bound = Math.floor((Number.isFinite(dual) ? dual : count) + ROUNDING);
      const found = Number(model.info.get('primal_solution_status')) === constants.solutionStatus.feasible;
      if (!found) return { members: null, bound };
      const { colValue } = model.getSolution();
      return { members: all.filter((k) => (colValue[k] ?? 0) > 0.5), bound };
    } finally {
      model.dispose();
    }
  };
}

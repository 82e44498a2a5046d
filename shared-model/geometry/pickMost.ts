import type { Highs, Model } from 'highs';

/** Choose `atLeast` or more of `count` things, as the limits allow. */
interface PickTask {
  readonly count: number;
  readonly limits: readonly PickLimit[];
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
  /** The first such choice found; null: none was. */
  readonly members: readonly number[] | null;
  /** No choice is larger than this. */
  readonly bound: number;
}

/** The same where a thing may be chosen in part: quick, and what its best choice breaks can be forbidden before the slow one is asked. */
interface PickParts {
  /** How much of each thing the best choice takes, 0 to 1, and what no choice of whole things is larger than. */
  solve(): { readonly shares: Float64Array; readonly bound: number };
  add(limits: readonly PickLimit[]): void;
  /** Gives its memory back. */
  end(): void;
}

export interface Picker {
  enough(task: PickTask): Picked;
  parts(count: number, limits: readonly PickLimit[]): PickParts;
}

/** What a bound found in floating point may be short of the true one: of branch and cut, and of the linear programme. */
const ROUNDING = 1e-6;
const ROUNDING_OF_PARTS = 1e-3;

/** s: no question is given less. */
const LEAST_SECONDS = 0.05;

/**
 * Picks with the mixed-integer solver: branch and cut, the same answer on every device.
 * @param secondsLeft what a question may take at most when it is asked: then answers depend on the device. A question that
 * was cut off tells nothing but what it found.
 */
export function pickWith(highs: Highs, secondsLeft: (() => number) | null = null): Picker {
  const { constants } = highs;
  const limited = (model: Model): void => {
    if (!secondsLeft) return;
    model.zeroAllClocks();
    model.options.set({ time_limit: Math.max(LEAST_SECONDS, secondsLeft()) });
  };

  function modelOf(count: number, limits: readonly PickLimit[], least: number | null): Model {
    const all = Array.from({ length: count }, (_, k) => k);
    const rows = limits.map(({ members }) => members);
    if (least !== null) rows.push(all);
    const starts = [0];
    for (const row of rows) starts.push((starts.at(-1) as number) + row.length);
    const indices = rows.flat();
    const lower = limits.map(() => -highs.infinity);
    const upper = limits.map(({ most }) => most);
    return highs.createModel({
      numCols: count,
      numRows: rows.length,
      sense: constants.objectiveSense.maximize,
      colCost: all.map(() => 1),
      colLower: all.map(() => 0),
      colUpper: all.map(() => 1),
      rowLower: least === null ? lower : [...lower, least],
      rowUpper: least === null ? upper : [...upper, highs.infinity],
      ...(least !== null && { integrality: all.map(() => constants.variableType.integer) }),
      matrix: { format: 'csr', numRows: rows.length, numCols: count, starts, indices, values: indices.map(() => 1) },
    });
  }

  return {
    enough({ count, limits, atLeast, nodes }) {
      if (count < atLeast) return { members: null, bound: atLeast - 1 };
      const model = modelOf(count, limits, atLeast);
      try {
        model.options.set({ output_flag: false, mip_max_nodes: nodes, mip_max_improving_sols: 1, mip_rel_gap: 0, mip_abs_gap: 0.999 });
        limited(model);
        model.run();
        const status = model.getModelStatus();
        if (status === constants.modelStatus.infeasible) return { members: null, bound: atLeast - 1 };
        const isCut = status === constants.modelStatus.timeLimit;
        const dual = isCut ? Infinity : Number(model.info.get('mip_dual_bound'));
        const bound = Math.floor((Number.isFinite(dual) ? dual : count) + ROUNDING);
        const found = Number(model.info.get('primal_solution_status')) === constants.solutionStatus.feasible;
        if (!found) return { members: null, bound };
        const { colValue } = model.getSolution();
        return { members: Array.from({ length: count }, (_, k) => k).filter((k) => (colValue[k] ?? 0) > 0.5), bound };
      } finally {
        model.dispose();
      }
    },

    parts(count, limits) {
      const model = modelOf(count, limits, null);
      model.options.set({ output_flag: false });
      return {
        solve() {
          limited(model);
          model.run();
          const shares = Float64Array.from(model.getSolution().colValue);
          const isSolved = model.getModelStatus() === constants.modelStatus.optimal;
          const total = shares.reduce((sum, share) => sum + share, 0);
          return { shares, bound: isSolved ? Math.floor(total + ROUNDING_OF_PARTS) : count };
        },
        add(more) {
          for (const { members, most } of more)
            model.addRow(-highs.infinity, most, { indices: [...members], values: members.map(() => 1) });
        },
        end: () => model.dispose(),
      };
    },
  };
}

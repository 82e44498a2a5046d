import loadHighs from 'highs';

const highs = await loadHighs();
/** s: a choice that is not proven the largest by then is still a choice. */
const PATIENCE = 20;
/** Terms on a line: readers of the text format have short lines. */
const TERMS = 12;

interface Chosen {
  readonly members: readonly number[];
  /** No choice is larger. */
  readonly isOptimal: boolean;
}

/** The largest choice of things of which no group holds two, by HiGHS, a general-purpose solver, told in its text format. */
export function mostChosen(count: number, groups: readonly (readonly number[])[]): Chosen {
  if (count === 0) return { members: [], isOptimal: true };
  const all = Array.from({ length: count }, (_, k) => k);
  const rows = groups.filter((group) => group.length > 1).map((group, k) => ` g${k}: ${sum(group)} <= 1`);
  const text = ['Maximize', ` most: ${sum(all)}`, 'Subject To', ...rows, 'Binary', ...all.map((k) => ` x${k}`), 'End'].join('\n');
  const solved = highs.solve(text, { output_flag: false, time_limit: PATIENCE, mip_rel_gap: 0, mip_abs_gap: 0.999 });
  const members = all.filter((k) => {
    const column = solved.Columns[`x${k}`];
    return column !== undefined && 'Primal' in column && column.Primal > 0.5;
  });
  return { members, isOptimal: solved.Status === 'Optimal' };
}

function sum(members: readonly number[]): string {
  return members.map((k, i) => `${i > 0 && i % TERMS === 0 ? '\n  ' : ''}${i > 0 ? '+ ' : ''}x${k}`).join(' ');
}

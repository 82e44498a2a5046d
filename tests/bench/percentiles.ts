export interface Times {
  readonly p50: number;
  readonly p95: number;
  readonly runs: number;
}

export function percentiles(values: readonly number[]): Times {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95), runs: sorted.length };
}

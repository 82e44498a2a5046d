/**
 * The one comparison that rules, lists and fixes share.
 *
 * A default printed by its standard both in inches and in mm passes at either figure
 * (915 printed, 914.4 exact). A figure that the class typed is taken as it is.
 */
const printedInches: ReadonlyMap<number, number> = new Map([
  [1525, 1524],
  [1220, 1219.2],
  [915, 914.4],
  [815, 812.8],
  [813, 812.8],
  [760, 762],
  [610, 609.6],
  [711, 711.2],
  [510, 508],
  [455, 457.2],
  [405, 406.4],
]);

/** Rounding noise of the geometry, in mm: far below what a tape can tell. */
const NOISE_MM = 1e-6;

/** The least value (mm) that still meets a wanted length (mm), whoever set it. */
export function leastThatMeets(neededMm: number, isPrintedDefault: boolean): number {
  const exact = isPrintedDefault ? printedInches.get(neededMm) : undefined;
  return exact === undefined ? neededMm : Math.min(neededMm, exact);
}

/** True when a measured length (mm) meets a wanted one (mm). NaN never meets anything. */
export function meets(measuredMm: number, neededMm: number, isPrintedDefault = false): boolean {
  return measuredMm >= leastThatMeets(neededMm, isPrintedDefault) - NOISE_MM;
}

/** Lengths in reports go to 0.01 mm, areas to 1e-6 m². */
export const roundMm = (mm: number): number => roundTo(mm, 100);
export const roundM2 = (m2: number): number => roundTo(m2, 1e6);

function roundTo(value: number, perUnit: number): number {
  const rounded = Math.round(value * perUnit) / perUnit;
  return rounded === 0 ? 0 : rounded; // no -0 in reports
}

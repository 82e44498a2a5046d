/** A15: ADA Standards for Accessible Design, 2010, advisory 308.1 (found). Advisory, for children in wheelchairs; mm above the floor. */
export const advisoryReach = [
  { fromMonths: 36, toMonths: 60, high: 915, low: 510 },
  { fromMonths: 60, toMonths: 108, high: 1015, low: 455 },
  { fromMonths: 108, toMonths: 156, high: 1120, low: 405 },
] as const;

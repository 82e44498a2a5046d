/** Aisles of rooms, mm. International Building Code (B08, B09 and B11 found in state prints, B10 second-hand). */
export const aisles = {
  /** B08, 1018.3: business and shop groups; aisles not open to the public and serving fewer than 50. */
  business: { width: 914, nonPublic: 711 },
  /** B09, 1018.5: classrooms follow the corridor rule; aisles not open to the public. */
  classroomNonPublic: 711,
  /** B10, 1020.2: corridors; serving fewer than 50; of schools with a required capacity of 100 or more. */
  corridor: { width: 1118, underFifty: 914, schoolHundredOrMore: 1829 },
  /** B11, 1018.2: floor that loose seating beside a table takes, measured from its edge (19 in). */
  seatAllowance: 483,
} as const;

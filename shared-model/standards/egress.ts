/**
 * Ways out of a room, mm, m² and persons. International Building Code and Approved Document B volume 2; most was read
 * second-hand, some is from memory, as each line says. The local fire authority decides.
 */
export const egress = {
  ibc: {
    /** B01, B02, table 1004.5: square feet of net floor for each person, as printed (1.858 and 3.252 m²). Classroom; day care. */
    squareFeetPerPerson: { classroom: 20, dayCare: 35 },
    /** B04, 1005.3.2: clear width of level parts and doors for each person. */
    widthPerPerson: 5.1,
    /** B05, table 1006.2.1: most persons and longest walk (from memory; B15 has the same) where a room has one way out. */
    oneWayOut: { persons: 49, walk: 22860 },
    /** B05: doors swing outward from so many persons on. */
    outwardFrom: 50,
    /** B07, 1010.1.1: clear width of a door. */
    doorClear: 813,
    /** B13, table 1017.2, from memory: longest walk to an exit, without and with sprinklers. */
    walk: { plain: 60960, sprinklered: 76200 },
  },
  england: {
    /** B16, table 2.1; that schools share these figures is from memory. Longest walk with one and with several directions. */
    walk: { oneDirection: 18000, severalDirections: 45000 },
    /** B17, table 2.3: clear width of exits and ways by persons, the last row for each person above. */
    widths: [
      { persons: 60, width: 750 },
      { persons: 110, width: 850 },
      { persons: 220, width: 1050 },
    ],
    widthPerPerson: 5,
    /** B18, 2.5 to 2.6, from memory: most persons with one and with two exits; doors swing outward above the first. */
    persons: { oneExit: 60, twoExits: 600 },
  },
} as const;

/** B17: clear width (mm) for so many persons. */
export function widthEngland(persons: number): number {
  const { widths, widthPerPerson } = egress.england;
  return widths.find((row) => persons <= row.persons)?.width ?? persons * widthPerPerson;
}

/** B04, B07: clear width (mm) for so many persons. */
export const widthIbc = (persons: number): number => Math.max(egress.ibc.doorClear, persons * egress.ibc.widthPerPerson);

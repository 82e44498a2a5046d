/** m² of a square foot, exact by the definition of the foot (0.3048 m). */
const SQ_FT = 0.3048 ** 2;

/** m² of so many square feet. */
export const squareFeet = (count: number): number => count * SQ_FT;
/** As typed: to a hundredth. */
export const inSquareFeet = (m2: number): number => Math.round((m2 / SQ_FT) * 100) / 100;

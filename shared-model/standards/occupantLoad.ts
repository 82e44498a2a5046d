/** m², exact */
const SQUARE_FOOT = 0.3048 ** 2;

/**
 * Floor per person from which a model code reckons how many may be in a room, m² net: International Building Code, table
 * 1004.5, classrooms 20 sq ft (B01) and day care 35 sq ft (B02), both found second-hand. Net leaves out corridors,
 * stairs, toilets, plant and closets; furniture is not taken off. That a room with a child under 30 months goes by day
 * care is a class rule: which figure a room takes turns on the age and use.
 */
export const occupantLoad = {
  // In square feet as printed: rounded to 1.858 m², 900 sq ft would make 46 persons instead of 45.
  classroom: { source: 'B01', m2: 20 * SQUARE_FOOT },
  dayCare: { source: 'B02', m2: 35 * SQUARE_FOOT, underMonths: 30 },
} as const;

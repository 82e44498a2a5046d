/**
 * Floor per person from which a model code reckons how many may be in a room, m² net: International Building Code, table
 * 1004.5, classrooms 20 sq ft (B01) and day care 35 sq ft (B02), both found second-hand. Net leaves out corridors,
 * stairs, toilets, plant and closets; furniture is not taken off. That a room with a child under 30 months goes by day
 * care is a class rule: which figure a room takes turns on the age and use.
 */
export const occupantLoad = {
  classroom: { source: 'B01', m2: 1.858 },
  dayCare: { source: 'B02', m2: 3.252, underMonths: 30 },
} as const;

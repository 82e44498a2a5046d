/** What floor a rule may take off before it divides. */
export const floorCategories = [
  'passage_to_elsewhere',
  'walkway_in_room',
  'door_swing',
  'toilet',
  'kitchen',
  'closed_storage',
  'staff_area',
  'cot_area',
  'built_in_cabinet',
  'open_shelf_for_children',
  'shelf_not_for_children',
  'table_chair',
  'floor_mat',
] as const;
export type FloorCategory = (typeof floorCategories)[number];

/** D: deduct. C: count as usable. ?: the text does not say. X: it depends, ask. */
export type DeductionCode = 'D' | 'C' | '?' | 'X';
export type DeductionRow = Readonly<Record<FloorCategory, DeductionCode>>;

/** The categories as people say them: "floor under open shelves for children". */
export const categoryWords: Readonly<Record<FloorCategory, string>> = {
  passage_to_elsewhere: 'a passage to elsewhere',
  walkway_in_room: 'a walkway inside the room',
  door_swing: "the floor under a door's swing",
  toilet: 'the toilet',
  kitchen: 'the kitchen',
  closed_storage: 'closed storage',
  staff_area: 'the area of the staff',
  cot_area: 'the area of the cots',
  built_in_cabinet: 'the floor under built-in cabinets',
  open_shelf_for_children: 'the floor under open shelves for children',
  shelf_not_for_children: 'the floor under shelves that are not for children',
  table_chair: 'the floor under tables and chairs',
  floor_mat: 'the floor under rugs, mats and their stand',
};

/** One letter a category, in the order of `floorCategories`. */
function row(codes: string): DeductionRow {
  return Object.fromEntries(floorCategories.map((category, i) => [category, codes[i] as DeductionCode])) as DeductionRow;
}

/**
 * What each rule takes off: our reading of the texts of rows C01 to C26, to be confirmed by the licensing authority.
 * Where a text is silent the class is asked.
 */
export const deductionMatrix = {
  /** C01 */
  england: row('D??DDDD??????'),
  /** C05, day care */
  wales: row('D??DDDD??????'),
  /** C09 */
  california: row('D??DDDD?DDDCC'),
  /** C11, nursery schools */
  newYork: row('D??DDD???????'),
  /** C12: of shelves only fixed ones not meant for children */
  texas: row('D??DDD??DCD??'),
  /** C13 */
  florida: row('???DDDD?DCX??'),
  /** C14: lockers too */
  massachusetts: row('D??DDDD??????'),
  /** C15: of shelves only those not meant for children */
  washington: row('D??DDDDXDCDCC'),
  /** C16 */
  maryland: row('D??DDDDDDCDCC'),
  /** C17 */
  michigan: row('D??DDDD??????'),
  /** C18 */
  colorado: row('?????????C?CC'),
  /** C19 */
  montana: row('D??DDDD?DDD??'),
  /** C20, a guideline */
  cfoc: row('DD?DXDD?DDDD?'),
  /** C23 and C24, as read in Victoria */
  australia: row('DXDDDDDDXC?CC'),
  /** C26 */
  newZealand: row('D??DXDDDD????'),
  /** A text that says nothing of deductions, or none was read. */
  silent: row('?????????????'),
} as const satisfies Readonly<Record<string, DeductionRow>>;

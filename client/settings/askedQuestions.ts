import type { Classroom } from '#model/schema/types.ts';

const words: Readonly<Record<string, string>> = {
  passage_to_elsewhere: 'Passage to elsewhere',
  walkway_in_room: 'Walkway in the room',
  door_swing: 'Floor a door swings over',
  toilet: 'Toilet',
  kitchen: 'Kitchen',
  closed_storage: 'Closed storage',
  staff_area: 'Area of the adults',
  cot_area: 'Cots',
  built_in_cabinet: 'Built-in cabinets',
  open_shelf_for_children: 'Under open shelves of the children',
  shelf_not_for_children: 'Under other shelves',
  table_chair: 'Under tables and chairs',
  floor_mat: 'Under rugs and mat stands',
};

/** What can be asked of the authority. All of them: an answer is kept when the rule set is changed to compare. */
export function askedQuestions(classroom: Classroom): { category: string; text: string }[] {
  const known = Object.entries(words).map(([category, text]) => ({ category, text }));
  const others = Object.keys(classroom.asked).filter((category) => !(category in words));
  return [...known, ...others.map((category) => ({ category, text: category.replaceAll('_', ' ') }))];
}

export const categoryWords = (category: string): string => words[category] ?? category.replaceAll('_', ' ');

import type { PlacesLine } from './placesLine.ts';

/** The limit that binds, in words, and what that means for the children enrolled. */
export function statementOf(line: PlacesLine, areMatsProven: boolean): string {
  const { places, binding, byArea, byAreaMost, enrolled } = line;
  if (places === null || binding === null) return 'How many children the room takes cannot be told yet.';
  if (binding === 'area' && byArea !== null && byAreaMost !== null && byAreaMost > byArea)
    return `The floor takes ${byArea} to ${byAreaMost}. ${against(byArea, enrolled, byAreaMost)}`;
  // Mats found are a lower bound until that is proven.
  if (binding === 'work' && !areMatsProven && enrolled > places)
    return `There are at least ${places} places to work. ${enrolled} are enrolled: a place for ${enrolled - places} more was not found.`;
  return `${bindingWords[binding](places)} ${against(places, enrolled)}`;
}

const bindingWords: Readonly<Record<NonNullable<PlacesLine['binding']>, (n: number) => string>> = {
  area: (n) => `The floor takes ${n}.`,
  work: (n) => `There ${n === 1 ? 'is 1 place' : `are ${n} places`} to work.`,
  adults: (n) => `The adults may look after ${n}.`,
  group: (n) => `A group may have ${n} children.`,
};

function against(places: number, enrolled: number, most = places): string {
  if (enrolled > most) return `${enrolled} are enrolled: ${enrolled - most} too many.`;
  if (enrolled > places) return `${enrolled} are enrolled: it depends on the open questions.`;
  if (enrolled === places) return `${enrolled} are enrolled: not one place over.`;
  return `${enrolled} are enrolled: ${places - enrolled} ${places - enrolled === 1 ? 'place' : 'places'} over.`;
}

import type * as Y from 'yjs';

export type YMap = Y.Map<unknown>;
export type YList = Y.Array<unknown>;

/** Lists of things with ids, each a Y.Map at the root of the document. */
const rootMaps = ['materials', 'arrangements', 'openings', 'fixtures', 'zones', 'notes', 'left', 'surveyWalls', 'surveyDiagonals'] as const;
export type RootMap = (typeof rootMaps)[number];

export const settingsOf = (doc: Y.Doc): YMap => doc.getMap<unknown>('classroom');
export const rootOf = (doc: Y.Doc, name: RootMap): YMap => doc.getMap<unknown>(name);
export const moveDayOf = (doc: Y.Doc): YMap => doc.getMap<unknown>('moveDay');
export const cornersOf = (doc: Y.Doc): YList => doc.getArray<unknown>('corners');

/** Every root, for what has to see all of them. */
export const allRoots = (doc: Y.Doc): (YMap | YList)[] => [
  settingsOf(doc),
  ...rootMaps.map((name) => rootOf(doc, name)),
  moveDayOf(doc),
  cornersOf(doc),
];

/** Nothing was ever written here: a classroom that has not come yet. */
export const isBlank = (doc: Y.Doc): boolean => settingsOf(doc).size === 0 && cornersOf(doc).length === 0;

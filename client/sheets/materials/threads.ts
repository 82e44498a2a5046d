import { areaCode } from '#model/catalogue/areas.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { areaCodes, areaNames } from '../../ui/areas.ts';
import { whereaboutsOf } from './whereabouts.ts';

/** The trays of one area on one shelf side, as a child meets them. */
interface ThreadPart {
  readonly side: SceneSide;
  readonly ids: readonly string[];
}

/** An area as one line of steps, cut by the shelves. */
export interface Thread {
  /** Two letters of the area, or its own name. */
  readonly key: string;
  readonly name: string;
  readonly parts: readonly ThreadPart[];
  readonly onTable: readonly string[];
  /** All materials of the area. */
  readonly count: number;
  readonly misplaced: number;
}

/** What an area is called and sorted by: two letters of the trade, else the class's own words. */
export function areaKey(material: Pick<Material, 'area' | 'strand'>): string {
  return areaCode(material.area, material.strand) ?? (material.area.trim() || '–');
}

export const areaTitle = (key: string): string => {
  const code = areaCodes.find((each) => each === key);
  if (code) return areaNames[code];
  return key === '–' ? 'Without an area' : key;
};

/** The threads of a room: the areas of the trade first, then the class's own by name. */
export function buildThreads(scene: Scene, misplaced: { has(id: string): boolean }): Thread[] {
  const where = whereaboutsOf(scene);
  const byArea = new Map<
    string,
    { parts: Map<SceneSide, { id: string; order: number }[]>; onTable: string[]; count: number; misplaced: number }
  >();
  for (const material of scene.classroom.materials) {
    const key = areaKey(material);
    let area = byArea.get(key);
    if (!area) {
      area = { parts: new Map(), onTable: [], count: 0, misplaced: 0 };
      byArea.set(key, area);
    }
    area.count += 1;
    if (misplaced.has(material.id)) area.misplaced += 1;
    const at = where.get(material.id);
    if (at?.at === 'table') area.onTable.push(material.id);
    if (at?.at !== 'board') continue;
    const part = area.parts.get(at.side);
    if (part) part.push({ id: material.id, order: at.order });
    else area.parts.set(at.side, [{ id: material.id, order: at.order }]);
  }
  const sideRank = new Map(scene.sides.map((side, i) => [side, i]));
  return [...byArea]
    .sort(([p], [q]) => areaRank(p) - areaRank(q) || p.localeCompare(q))
    .map(([key, area]) => ({
      key,
      name: areaTitle(key),
      parts: [...area.parts]
        .sort(([p], [q]) => (sideRank.get(p) ?? 0) - (sideRank.get(q) ?? 0))
        .map(([side, list]) => ({ side, ids: list.sort((p, q) => p.order - q.order).map(({ id }) => id) })),
      onTable: area.onTable,
      count: area.count,
      misplaced: area.misplaced,
    }));
}

function areaRank(key: string): number {
  const rank = (areaCodes as readonly string[]).indexOf(key);
  if (rank !== -1) return rank;
  return key === '–' ? areaCodes.length + 1 : areaCodes.length;
}

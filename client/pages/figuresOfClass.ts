import { children } from '#model/schema/children.ts';
import { access, floorWork } from '#model/schema/classroom.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';

export interface ClassFigure {
  readonly name: string;
  readonly value: string;
  readonly isDefault: boolean;
}

const accessNames = {
  routeWidth: 'width of a way',
  leastWidth: 'least width of a way',
  pinchWidth: 'width of a short pinch',
  pinchLength: 'length of a short pinch',
  turning: 'floor to turn',
  frontStrip: 'floor kept free before open fronts',
} as const;
/** Which settings of the class a check without options of its own goes by. */
const accessOf: Readonly<Record<string, readonly (keyof typeof accessNames)[]>> = {
  'way/width': ['routeWidth', 'leastWidth', 'pinchWidth', 'pinchLength'],
  'way/narrow': ['routeWidth', 'leastWidth', 'pinchWidth', 'pinchLength'],
  'way/turn': ['turning'],
  'floor/mats': ['frontStrip', 'routeWidth'],
};

/** The class's own settings that a check goes by, beside the check's options. */
export function figuresOfClass(rule: string, classroom: Classroom): ClassFigure[] {
  const units = classroom.display.units;
  const usual = access.parse({});
  const figures = (accessOf[rule] ?? []).map((key): ClassFigure => {
    const value = classroom.access[key];
    return { name: accessNames[key], value: sayLength(value, units), isDefault: value === usual[key] };
  });
  const { percentile, smallestStature, head } = classroom.children;
  const usualChild = children.parse({});
  if (rule.startsWith('reach/') && rule !== 'reach/advisory')
    return [
      smallestStature === null
        ? { name: 'percentile of the smallest child', value: String(percentile), isDefault: percentile === usualChild.percentile }
        : { name: 'the smallest child, measured', value: sayLength(smallestStature, units), isDefault: false },
    ];
  if (rule === 'sight/hidden')
    return [{ name: 'head of a child at work', value: sayLength(head, units), isDefault: head === usualChild.head }];
  if (rule !== 'floor/mats') return figures;
  const { mat, gap, wanted } = classroom.floorWork;
  const byDefault = floorWork.parse({});
  return [
    {
      name: 'a mat',
      value: `${sayLength(mat.width, units)} × ${sayLength(mat.depth, units)}`,
      isDefault: mat.width === byDefault.mat.width && mat.depth === byDefault.mat.depth,
    },
    { name: 'gap between mats', value: sayLength(gap, units), isDefault: gap === byDefault.gap },
    { name: 'mats wanted', value: wanted === null ? 'one for each child without a seat' : String(wanted), isDefault: wanted === null },
    ...figures,
  ];
}

import { catalogueById } from '../catalogue/catalogue.ts';
import type { Scene, SceneTray } from '../scene/types.ts';
import type { Material } from '../schema/types.ts';
import type { OrderMeasure } from './order.ts';
import { sayPlace } from './placeWords.ts';

/** Where a material stands in its strand, and on the shelf. */
export interface StepOf {
  readonly material: Material;
  /** "3 of 7": the how many-th step of its strand among the class's materials; null without a step. */
  readonly number: number | null;
  readonly steps: number;
  /** What comes just before: the step below in its strand, and what it is said to come after. */
  readonly comesAfter: readonly Material[];
  /** Names of what it is said to come after and the class does not have. */
  readonly missing: readonly string[];
  /** What comes just after: the step above in its strand, and what is said to come after it. */
  readonly comesBefore: readonly Material[];
  /** "middle board, 4th"; null when it is on no shelf. */
  readonly place: string | null;
}

/** What a material comes after and before, and where it stands. Null for an unknown id. */
export function stepOf(scene: Scene, materialId: string): StepOf | null {
  const material = scene.materialById.get(materialId);
  if (!material) return null;
  const { materials } = scene.classroom;
  const isMeant = (id: string, other: Material): boolean => id === other.id || (!scene.materialById.has(id) && id === other.catalogue);
  const isAfter = (later: Material, first: Material): boolean => later !== first && later.after.some((id) => isMeant(id, first));
  const steps = strandSteps(materials, material);
  const at = typeof material.step === 'number' ? steps.indexOf(material.step) : -1;
  const isAtStep = (other: Material, index: number): boolean =>
    at !== -1 && isMate(other, material) && steps[index] !== undefined && other.step === steps[index];
  return {
    material,
    number: at === -1 ? null : at + 1,
    steps: steps.length,
    comesAfter: materials.filter((other) => isAtStep(other, at - 1) || isAfter(material, other)),
    missing: material.after.filter((id) => !materials.some((other) => isMeant(id, other))).map((id) => catalogueById.get(id)?.name ?? id),
    comesBefore: materials.filter((other) => isAtStep(other, at + 1) || isAfter(other, material)),
    place: sayPlace(scene, materialId),
  };
}

/** The tray of the same strand that a child meets next; null when it is the last, or on no children's shelf. */
export function nextOf(order: OrderMeasure, materialId: string): SceneTray | null {
  const { reading } = order.relation;
  const at = reading.findIndex((tray) => tray.material.id === materialId);
  const strand = reading[at]?.material.strand.trim() ?? '';
  if (strand === '') return null;
  return reading.slice(at + 1).find((tray) => tray.material.strand.trim() === strand) ?? null;
}

/** Materials of a strand by step, the easiest first, those without a step last: the thread of the Materials sheet. */
export function threadOf(materials: readonly Material[], strand: string): Material[] {
  const rank = ({ step }: Material): number => (typeof step === 'number' ? step : Infinity);
  return materials.filter((m) => m.strand.trim() === strand.trim()).sort((p, q) => (rank(p) === rank(q) ? 0 : rank(p) - rank(q)));
}

const isMate = (p: Material, q: Material): boolean => p.strand.trim() !== '' && p.strand.trim() === q.strand.trim();

/** The different steps of a material's strand, ascending. */
function strandSteps(materials: readonly Material[], material: Material): number[] {
  const steps = materials.filter((other) => isMate(other, material)).flatMap(({ step }) => (typeof step === 'number' ? [step] : []));
  return [...new Set(steps)].sort((p, q) => p - q);
}

import { addedAreas } from '../geometry/coverage.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { DeductionCode, DeductionRow, FloorCategory } from '../standards/deductionMatrix.ts';
import type { FloorItem } from './floorItems.ts';

/** What a rule does with one item. open: the text is silent or says "it depends", and the class has not answered. */
type FloorAnswer = 'deduct' | 'count' | 'open';

interface CountedItem {
  readonly id: string;
  readonly kind: string;
  readonly label: string;
  readonly category: FloorCategory | null;
  /** Code of the rule; D for what is never floor. */
  readonly code: DeductionCode;
  readonly answer: FloorAnswer;
  /** The answer comes from the class, not from the text. */
  readonly isAsked: boolean;
  /** m² within the room, by itself */
  readonly area: number;
  /** m² that it adds to what the items before it take off; 0 for what counts. Open ones come last. */
  readonly deducted: number;
}

/** Floor that counts under one rule, m². */
export interface CountedFloor {
  /** inside the walls */
  readonly inside: number;
  /** rooms elsewhere, as entered */
  readonly others: number;
  /** With everything open deducted, and with all of it counted; alike when nothing is open. Other rooms included. */
  readonly least: number;
  readonly most: number;
  readonly items: readonly CountedItem[];
  /** Open categories that hold floor, in the order of the matrix. */
  readonly open: readonly FloorCategory[];
}

export type Asked = Readonly<Record<string, 'deduct' | 'count'>>;

/** What counts of a room's floor under one rule's deductions; what overlaps is taken off once. Areas in m². */
export function countedFloor(
  room: { readonly outline: Polygon; readonly area: number },
  others: number,
  items: readonly FloorItem[],
  deductions: DeductionRow,
  asked: Asked,
): CountedFloor {
  const judged = items.map((item) => ({ item, ...judge(item, deductions, asked) }));
  const taken = [...judged.filter((j) => j.answer === 'deduct'), ...judged.filter((j) => j.answer === 'open')];
  const added = addedAreas(
    taken.map(({ item }) => item.ring),
    room.outline,
    taken.map(({ item }) => item.area),
  );
  const deducted = new Map(taken.map(({ item }, i) => [item, (added[i] ?? 0) / 1e6]));
  const sumOf = (answer: FloorAnswer): number =>
    judged.reduce((sum, j) => (j.answer === answer ? sum + (deducted.get(j.item) ?? 0) : sum), 0);
  const most = Math.max(0, room.area - sumOf('deduct')) + others;
  const open = new Set(judged.filter((j) => j.answer === 'open' && (deducted.get(j.item) ?? 0) > 0).map((j) => j.item.category));
  return {
    inside: room.area,
    others,
    least: Math.max(others, most - sumOf('open')),
    most,
    items: judged.map(({ item, code, answer, isAsked }) => ({
      id: item.id,
      kind: item.kind,
      label: item.label,
      category: item.category,
      code,
      answer,
      isAsked,
      area: item.area / 1e6,
      deducted: deducted.get(item) ?? 0,
    })),
    open: (Object.keys(deductions) as FloorCategory[]).filter((category) => open.has(category)),
  };
}

function judge(item: FloorItem, deductions: DeductionRow, asked: Asked): Pick<CountedItem, 'code' | 'answer' | 'isAsked'> {
  if (item.isNeverFloor || item.category === null) return { code: 'D', answer: 'deduct', isAsked: false };
  const code = deductions[item.category];
  if (code === 'D') return { code, answer: 'deduct', isAsked: false };
  if (code === 'C') return { code, answer: 'count', isAsked: false };
  const answer = Object.hasOwn(asked, item.category) ? asked[item.category] : undefined;
  return { code, answer: answer ?? 'open', isAsked: answer !== undefined };
}

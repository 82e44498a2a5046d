import type { LengthUnits } from '#model/units/sayLength.ts';
import { type PaperName, paperNames } from './paper.ts';

/** What this person prints, and on what. Kept on the device. */
export interface PrintChoice {
  readonly paper: PaperName;
  /** The day of the move: its plan, steps and crates. */
  readonly isMove: boolean;
  readonly isRoom: boolean;
  /** The open checks marked on the plan. */
  readonly hasMarks: boolean;
  /** Open remarks as numbers on the plan, with their list. */
  readonly hasRemarks: boolean;
  /** Floor that no adult sees, hatched. */
  readonly hasUnseen: boolean;
  /** "none", "all", or the id of one shelf */
  readonly fronts: string;
  /** 10: as large as the page takes; 20: more on a page */
  readonly frontScale: 10 | 20;
  readonly labels: string;
  readonly isChecks: boolean;
}

const KEY = 'lowshelf.print';

const atFirst = (units: LengthUnits): PrintChoice => ({
  paper: units === 'imperial' ? 'letter' : 'a4',
  isMove: false,
  isRoom: true,
  hasMarks: true,
  hasRemarks: true,
  hasUnseen: true,
  fronts: 'none',
  frontScale: 10,
  labels: 'none',
  isChecks: false,
});

/** The last choice on this device; what was never chosen, or cannot be read, is as at first. `shelves`: ids of those there are now. */
export function readPrintChoice(units: LengthUnits, shelves: readonly string[]): PrintChoice {
  const first = atFirst(units);
  const kept = load();
  const flag = (key: 'isMove' | 'isRoom' | 'hasMarks' | 'hasRemarks' | 'hasUnseen' | 'isChecks'): boolean =>
    typeof kept[key] === 'boolean' ? kept[key] : first[key];
  const which = (key: 'fronts' | 'labels'): string => {
    const wanted = kept[key];
    if (wanted === 'none' || wanted === 'all') return wanted;
    if (typeof wanted !== 'string') return first[key];
    // A shelf of another classroom, or one that is gone.
    return shelves.includes(wanted) ? wanted : 'all';
  };
  return {
    paper: paperOf(kept, units),
    isMove: flag('isMove'),
    isRoom: flag('isRoom'),
    hasMarks: flag('hasMarks'),
    hasRemarks: flag('hasRemarks'),
    hasUnseen: flag('hasUnseen'),
    fronts: which('fronts'),
    frontScale: kept.frontScale === 20 ? 20 : 10,
    labels: which('labels'),
    isChecks: flag('isChecks'),
  };
}

const paperOf = (kept: Record<string, unknown>, units: LengthUnits): PaperName =>
  paperNames.find((name) => name === kept.paper) ?? atFirst(units).paper;

/** What is printed first of all from the sheet of the move. */
export const onlyMove = (choice: PrintChoice): PrintChoice => ({
  ...choice,
  isMove: true,
  isRoom: false,
  isChecks: false,
  fronts: 'none',
  labels: 'none',
});

/** The paper that this device prints on; that of the units where none was chosen. */
export const readPaper = (units: LengthUnits): PaperName => paperOf(load(), units);

/** The rest of the choice stays as it was. */
export const keepPaper = (paper: PaperName): void => keep({ ...load(), paper });

export const keepPrintChoice = (choice: PrintChoice): void => keep(choice);

function keep(choice: object): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choice));
  } catch {
    // A browser that keeps nothing asks again next time.
  }
}

function load(): Record<string, unknown> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    return typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

import * as ratio from './childRatios.ts';
import { type DeductionRow, deductionMatrix } from './deductionMatrix.ts';
import * as space from './spacePerChild.ts';

/** A rule for how many children a room takes: floor per child, what floor counts, children per adult. */
export interface RuleSet {
  readonly id: string;
  readonly name: string;
  /** By the kind of service where the rule depends on it, otherwise one table; null: the class sets its own figure. */
  readonly space: space.SpaceTable | Readonly<Record<string, space.SpaceTable>> | null;
  readonly deductions: DeductionRow;
  /** Row of the index that the deductions were read in; null: none. */
  readonly deductionSource: string | null;
  /** null: no ratio was read. */
  readonly ratios: ratio.Ratios | Readonly<Record<string, ratio.Ratios>> | null;
  readonly isGuideline?: true;
}

const d = deductionMatrix;

/** Every rule set that a class can choose, in the order shown. None of this is legal advice. */
export const ruleSets: readonly RuleSet[] = [
  { id: 'england', name: 'England', space: space.spaceEngland, deductions: d.england, deductionSource: 'C01', ratios: ratio.ratioEngland },
  { id: 'wales', name: 'Wales, day care', space: space.spaceWales, deductions: d.wales, deductionSource: 'C05', ratios: ratio.ratioWales },
  {
    id: 'scotland',
    name: 'Scotland',
    space: space.spaceScotland,
    deductions: d.silent,
    deductionSource: null,
    ratios: ratio.ratioScotland,
  },
  { id: 'ireland', name: 'Ireland', space: space.spaceIreland, deductions: d.silent, deductionSource: null, ratios: ratio.ratioIreland },
  {
    id: 'us-california',
    name: 'California',
    space: space.spaceCalifornia,
    deductions: d.california,
    deductionSource: 'C09',
    ratios: ratio.ratioCalifornia,
  },
  {
    id: 'us-washington',
    name: 'Washington State',
    space: space.spaceWashington,
    deductions: d.washington,
    deductionSource: 'C15',
    ratios: null,
  },
  {
    id: 'us-massachusetts',
    name: 'Massachusetts',
    space: space.spaceMassachusetts,
    deductions: d.massachusetts,
    deductionSource: 'C14',
    ratios: null,
  },
  { id: 'us-florida', name: 'Florida', space: space.spaceFlorida, deductions: d.florida, deductionSource: 'C13', ratios: null },
  {
    id: 'us-new-york',
    name: 'New York, nursery schools',
    space: space.spaceNewYork,
    deductions: d.newYork,
    deductionSource: 'C11',
    ratios: null,
  },
  { id: 'us-maryland', name: 'Maryland', space: space.spaceMaryland, deductions: d.maryland, deductionSource: 'C16', ratios: null },
  { id: 'us-montana', name: 'Montana', space: space.spaceMontana, deductions: d.montana, deductionSource: 'C19', ratios: null },
  { id: 'us-texas', name: 'Texas', space: space.spaceTexas, deductions: d.texas, deductionSource: 'C12', ratios: null },
  {
    id: 'us-cfoc',
    name: 'Caring for Our Children',
    space: space.spaceCfoc,
    deductions: d.cfoc,
    deductionSource: 'C20',
    ratios: ratio.ratioCfoc,
    isGuideline: true,
  },
  {
    id: 'australia',
    name: 'Australia, as read in Victoria',
    space: space.spaceAustralia,
    deductions: d.australia,
    deductionSource: 'C24',
    ratios: ratio.ratioAustralia,
  },
  { id: 'new-zealand', name: 'New Zealand', space: space.spaceNewZealand, deductions: d.newZealand, deductionSource: 'C26', ratios: null },
  { id: 'own', name: 'The class’s own rule', space: null, deductions: d.silent, deductionSource: null, ratios: null },
];

/** The rule set of an id; undefined: there is none of that name. */
export const ruleSetOf = (id: string): RuleSet | undefined => ruleSets.find((set) => set.id === id);

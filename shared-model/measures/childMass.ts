import { cdcWeight } from '../standards/cdcWeight.ts';
import { type ChildModel, GROWTH_MONTHS } from './childModel.ts';
import { lmsAt, lmsValue, zOfPercentile } from './growth.ts';

/** Body mass of a child at her percentile, kg: CDC 2000. Apart from her lengths, which the page needs at once. */
export function massOf({ months, percentile, sex }: Pick<ChildModel, 'months' | 'percentile' | 'sex'>): number {
  return lmsValue(lmsAt(cdcWeight, sex, Math.min(months, GROWTH_MONTHS.to)), zOfPercentile(percentile));
}

import { sayYearsAndMonths } from '../units/sayAge.ts';

interface Child {
  readonly months: number;
  /** Of 100 children of her age, how many are smaller. */
  readonly percentile: number;
}

/** The child that a class is judged by, by the girls' table: "a girl of 4 years 3 months, smaller than 95 of 100". */
export const sayChild = ({ months, percentile }: Child): string =>
  `a girl of ${sayYearsAndMonths(months)}, smaller than ${Math.round((100 - percentile) * 100) / 100} of 100`;

/** The same after who she is to the class: "the smallest child (a girl of …)", "the smallest child (as measured)". */
export const sayWhichChild = (who: string, child: Child & { readonly isMeasured: boolean }): string =>
  `${who} (${child.isMeasured ? 'as measured' : sayChild(child)})`;

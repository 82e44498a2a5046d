/**
 * Counts of the steps that most of the time of clearances goes into. Milliseconds depend on the machine and on what
 * else it does; these do not, so tests hold them down.
 */
export const workDone = {
  /** pairs of parts whose closest points were found */
  pairs: 0,
  /** fronts before which the largest discs were found */
  fronts: 0,
  /** narrow stretches followed */
  stretches: 0,
  /** gaps closed, once for each set of test points */
  links: 0,
};

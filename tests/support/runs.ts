/** `npm run proof` asks the questions of `npm test` again, of far more cases. */
const isProof = process.env.LOWSHELF_PROOF === '1';

/** How many cases: the only place that tells the short form of a test from the long one. */
export const runs = <T>(short: T, long: T): T => (isProof ? long : short);

/** ms that a loop over many cases may take, on a machine busy with other things as well. */
export const patience = runs(300_000, 2_400_000);

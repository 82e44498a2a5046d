const poly = (r: number, ...c: readonly number[]): number => c.reduceRight((sum, k) => sum * r + k, 0);

/**
 * The z below which a share `p` (0 to 1) of a normal distribution lies.
 * Algorithm AS 241 (PPND16), Wichura 1988, Applied Statistics 37: about 16 digits. Outside 0 to 1: NaN.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return Number.NaN;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    const top = poly(
      r,
      3.3871328727963665,
      133.14166789178438,
      1971.5909503065513,
      13731.693765509461,
      45921.95393154987,
      67265.7709270087,
      33430.575583588128,
      2509.0809287301227,
    );
    const bottom = poly(
      r,
      1,
      42.313330701600911,
      687.1870074920579,
      5394.1960214247511,
      21213.794301586597,
      39307.89580009271,
      28729.085735721943,
      5226.495278852854,
    );
    return (q * top) / bottom;
  }
  const tail = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = tail <= 5 ? middleTail(tail - 1.6) : farTail(tail - 5);
  return q < 0 ? -z : z;
}

function middleTail(r: number): number {
  const top = poly(
    r,
    1.4234371107496837,
    4.630337846156546,
    5.769497221460691,
    3.6478483247632045,
    1.2704582524523684,
    0.24178072517745061,
    0.022723844989269184,
    0.00077454501427834139,
  );
  const bottom = poly(
    r,
    1,
    2.053191626637759,
    1.6763848301838038,
    0.6897673349851,
    0.14810397642748008,
    0.015198666563616457,
    0.00054759380849953455,
    1.0507500716444169e-9,
  );
  return top / bottom;
}

function farTail(r: number): number {
  const top = poly(
    r,
    6.657904643501103,
    5.4637849111641144,
    1.7848265399172913,
    0.29656057182850487,
    0.026532189526576124,
    0.0012426609473880784,
    2.7115555687434876e-5,
    2.0103343992922881e-7,
  );
  const bottom = poly(
    r,
    1,
    0.599832206555888,
    0.13692988092273581,
    0.014875361290850615,
    0.0007868691311456133,
    1.8463183175100548e-5,
    1.4215117583164459e-7,
    2.0442631033899397e-15,
  );
  return top / bottom;
}

import * as random from 'lib0/random';

const LETTERS = '0123456789abcdefghijklmnopqrstuvwxyz';

/**
 * A new id such as "s-4k2p9x0q7w": what it is, then 50 random bits from the platform's cryptographic
 * source, so that tablets that never met do not make the same one.
 */
export function newId(kind: string): string {
  let id = `${kind}-`;
  for (let i = 0; i < 10; i++) id += LETTERS[random.uint32() % LETTERS.length];
  return id;
}

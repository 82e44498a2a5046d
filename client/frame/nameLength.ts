/** Letters of the name of a class or an arrangement: more stand on no tab and in no title block. */
export const MOST_NAME = 80;

/** How many letters are left, once they get few; null: enough. */
export function sayFull(name: string): string | null {
  const left = MOST_NAME - name.length;
  if (left > 15) return null;
  return left > 0 ? `${left === 1 ? '1 letter' : `${left} letters`} left of ${MOST_NAME}` : `full: ${MOST_NAME} letters are the most`;
}

/** "1 change", "3 changes", "no change". */
export function sayCount(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return `no ${one}`;
  return `${count} ${count === 1 ? one : many}`;
}

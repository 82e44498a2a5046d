/** What is written on a stand for rolled mats, the second where there is no room for the first: never "mat" alone, which lies on the floor. */
export function matStandWords(name: string): readonly [whole: string, short: string] {
  const whole = name.trim() || 'mat stand';
  const [first = ''] = whole.split(' ');
  return [/^mats?$/i.test(whole) ? 'mat stand' : whole, /^mats?$/i.test(first) ? 'stand' : first];
}

import type { TrialCount, TrialFindings } from '#model/analysis/trialFindings.ts';
import type { QuestionId } from '#model/findings/finding.ts';

/** "6 out of her reach" */
const about = (whose: string): Readonly<Record<QuestionId, string>> => ({
  way: 'about getting through',
  reach: `out of ${whose} reach`,
  order: 'in the order of the shelves',
  floor: 'about floor to work on',
  places: 'about how many the room takes',
  sight: 'about what an adult sees',
  exit: 'about the ways out',
  steady: 'about safety and small parts',
  survey: 'in the drawing',
});

/** What the checks say with them in the class, against before: each count by question. */
export function sayTrialFindings({ must, should }: TrialFindings, count: number): string {
  const [withWhom, whose] = count === 1 ? ['With her', 'her'] : ['With them', 'their'];
  const parts = [sayChange(must, 'must', whose), sayChange(should, 'should', whose)].flatMap((part) => part ?? []);
  if (parts.length === 0) return `${withWhom} the checks find nothing that they do not find now.`;
  return parts.map((part) => `${withWhom} ${part}.`).join(' ');
}

function sayChange({ before, after, byQuestion }: TrialCount, verb: 'must' | 'should', whose: string): string | null {
  if (byQuestion.length === 0) return null;
  const words = about(whose);
  const more = byQuestion.filter((one) => one.after > one.before);
  const fewer = byQuestion.filter((one) => one.after < one.before);
  const gained = more.reduce((sum, one) => sum + one.after - one.before, 0);
  const list = (of: typeof byQuestion): string => of.map((one) => `${Math.abs(one.after - one.before)} ${words[one.question]}`).join(', ');
  const gone = fewer.length === 0 ? '' : `${list(fewer)} no longer`;
  const total = `${after} in all, ${before} before`;
  if (gained === 0) return `fewer things ${verb} be mended: ${gone} (${total})`;
  const things = `${gained} more ${gained === 1 ? 'thing' : 'things'} ${verb} be mended`;
  return `${things}: ${list(more)}${gone === '' ? '' : `; ${gone}`} (${total})`;
}

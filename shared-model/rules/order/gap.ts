import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { whereFits } from '../../measures/fit.ts';
import { type Having, type Prerequisite, prerequisitesOf } from '../../measures/order/prerequisites.ts';
import type { OrderMeasure } from '../../measures/order.ts';
import { pointOfTray } from '../../measures/placeWords.ts';
import type { Scene } from '../../scene/types.ts';
import type { Sureness } from '../../schema/types.ts';
import { defineRule } from '../rule.ts';

/** After this many findings no more places are looked for. */
const MOST_FIXES = 4;

export const gap = defineRule({
  id: 'order/gap',
  asks: 'Is the step before each thing there?',
  why: 'Each thing prepares the next. Where the step before is not on the shelf, a child meets the harder one unprepared, and gives up or needs an adult.',
  tier: 'settle',
  sources: ['M1912', 'H1914', 'E1917', 'common practice', 'class rule'],
  options: z.strictObject({}),
  messages: {
    absent: 'Get or make {what}: it comes before {later} {told}, and the class does not have it.',
    away: 'See to {what}, which is {state}: it comes before {later} {told}.',
    store: 'Put out {what}, which is in store: it comes before {later} {told}.',
    unplaced: 'Give {what} a place: it comes before {later} {told}, but has none in this arrangement.',
    unknown: 'Say what “{what}” is: {later} is said to come after it, but neither the class nor the catalogue knows it.',
  },
  judge({ scene, measures }): RuleResult {
    const asked = prerequisitesOf(scene);
    if (asked.length === 0) return doesNotApply;
    const lacking = asked.filter(({ having }) => having !== 'placed');
    return { applies: true, findings: lacking.map((one, index) => finding(scene, measures.order(), one, index < MOST_FIXES)) };
  },
});

const told: Readonly<Record<Sureness, { readonly words: string; readonly sources: readonly string[] }>> = {
  published: { words: 'by the handbooks', sources: ['M1912', 'H1914', 'E1917'] },
  own: { words: 'by the class’s own word', sources: ['class rule'] },
  'common practice': { words: 'by common practice', sources: ['common practice'] },
};
const keys: Readonly<Record<Exclude<Having, 'placed'>, string>> = {
  unplaced: 'unplaced',
  store: 'store',
  mend: 'away',
  make: 'away',
  wanted: 'away',
  absent: 'absent',
  unknown: 'unknown',
};
const states: Partial<Readonly<Record<Having, string>>> = { mend: 'being mended', make: 'still to be made', wanted: 'still wanted' };

function finding(scene: Scene, order: OrderMeasure, one: Prerequisite, withFix: boolean): RuleFinding {
  const { id, material, name, having, later, sure, surely } = one;
  const isUnknown = having === 'unknown';
  // What the class has at hand only has to be put out.
  const isAtHand = having === 'store' || having === 'unplaced';
  const first = scene.stands.get(later[0]?.id ?? '');
  const point = first && pointOfTray(scene, first);
  const fix = withFix && isAtHand && material ? putOut(scene, order, material.id) : null;
  const laterNames = sayThings((isUnknown ? later : surely).map((m) => m.name));
  const said: RuleFinding = {
    outcome: isUnknown ? 'cannot-tell' : 'problem',
    severity: isAtHand || sure === 'common practice' ? 'note' : 'should',
    messageKey: keys[having === 'placed' ? 'unplaced' : having],
    data: {
      what: name,
      later: laterNames,
      told: `${told[sure].words}${sayOthers(later.length - surely.length, sure)}`,
      state: states[having] ?? '',
    },
    subjects: [...(material ? [material.id] : []), ...later.map((m) => m.id)],
    part: id,
    sources: told[sure].sources,
    ...(point && { at: point }),
    ...(fix && { fix }),
  };
  return isUnknown ? { ...said, missing: [`say what “${id}” is, or take it out of what ${laterNames} comes after`] } : said;
}

/** What comes after it by a lesser word is counted apart: none of it is said to be published. */
const sayOthers = (count: number, sure: Sureness): string =>
  count === 0
    ? ''
    : ` and before ${count} more ${sure === 'published' ? 'by the class’s own word or by common practice' : 'by common practice'}`;

/** The best place where it fits, is in reach, in step and cuts no other strand, on a shelf side that holds its area. */
function putOut(scene: Scene, order: OrderMeasure, material: string): Fix | null {
  const area = scene.materialById.get(material)?.area;
  const best = whereFits(scene, order, material).find(
    (place) =>
      place.fits !== 'no' &&
      place.isInReach &&
      place.isInStep &&
      place.cuts === null &&
      place.side.boards.some((board) => board.trays.some((tray) => tray.material.area === area)),
  );
  if (!best) return null;
  const name = scene.materialById.get(material)?.name ?? material;
  return {
    label: `Do it: ${name} to ${sayBoard(best.side, best.board)}`,
    edits: best.placements.map((placement) => ({ do: 'place', placement })),
  };
}

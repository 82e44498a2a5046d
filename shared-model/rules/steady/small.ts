import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { fitsCylinder } from '../../measures/smallParts.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import type { Material } from '../../schema/types.ts';
import { smallPartsCylinder } from '../../standards/smallPartsCylinder.ts';
import { defineRule } from '../rule.ts';

const decides = 'Your local authority decides.';

export const small = defineRule({
  id: 'steady/small',
  asks: 'Is nothing that a small child could choke on within its reach?',
  why: 'A child under three still tries things with the mouth. What fits into the small parts cylinder can close its windpipe.',
  tier: 'settle',
  sources: ['D05'],
  options: z.strictObject({
    /** months: asked as long as somebody younger is enrolled */
    underMonths: z.number().min(0).max(240).default(smallPartsCylinder.underMonths),
  }),
  messages: {
    fits: `{what} on {place}: the smallest piece fits into the small parts cylinder, and children from {months} months on are enrolled; this counts below {under} months. ${decides}`,
    flagged: `{what} on {place} {is} marked as having small parts, and children from {months} months on are enrolled; this counts below {under} months. ${decides}`,
    doubtful: `{what} on {place}: whether the smallest piece fits into the small parts cylinder depends on its shape. ${decides}`,
    notKnown: `Of {count} things within reach it is not known how small their pieces are ({what}). ${decides}`,
    noAges: `How young the youngest child is, is not known. ${decides}`,
  },
  judge({ scene, options: { underMonths } }): RuleResult {
    const places = placesOf(scene);
    if (places.size === 0) return doesNotApply;
    const enrolled = scene.classroom.children.groups.filter((group) => group.count > 0);
    if (enrolled.length === 0) return { applies: true, findings: [noAges] };
    const youngest = Math.min(...enrolled.map((group) => group.fromMonths));
    if (youngest >= underMonths) return doesNotApply;
    const findings = [...places].flatMap(([place, trays]) => placeFindings(scene, place, trays, { months: youngest, under: underMonths }));
    return { applies: true, findings: [...findings, ...notKnown([...places.values()].flat())] };
  },
});

const noAges: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'must',
  messageKey: 'noAges',
  data: {},
  subjects: ['classroom'],
  missing: ['give the ages of the children'],
};

const FLOOR = 'floor';

/** What stands where a child reaches it, by the piece it stands on: all but what is on shelves for adults. */
function placesOf(scene: Scene): Map<string, SceneTray[]> {
  const places = new Map<string, SceneTray[]>();
  for (const tray of scene.stands.values()) {
    const piece = tray.placement.piece === null ? null : scene.bodyById.get(tray.placement.piece)?.piece;
    if (piece?.for === 'adults') continue;
    const id = piece?.id ?? FLOOR;
    places.set(id, [...(places.get(id) ?? []), tray]);
  }
  return places;
}

type Verdict = 'fits' | 'flagged' | 'doubtful' | 'notKnown' | 'fine';

/** What fits is a small part whatever was ticked; what is in doubt goes by what was ticked. */
function verdictOf({ smallest, smallParts }: Material): Verdict {
  const fit = smallest === null ? null : fitsCylinder(smallest);
  if (fit === 'fits') return 'fits';
  if (fit === 'no') return 'fine';
  if (smallParts !== null) return smallParts ? 'flagged' : 'fine';
  return fit === 'doubtful' ? 'doubtful' : 'notKnown';
}

function placeFindings(scene: Scene, place: string, trays: readonly SceneTray[], ages: { months: number; under: number }): RuleFinding[] {
  const body = scene.bodyById.get(place);
  const of = (wanted: Verdict): Material[] => trays.map((tray) => tray.material).filter((m) => verdictOf(m) === wanted);
  const finding = (key: 'fits' | 'flagged' | 'doubtful', found: readonly Material[]): RuleFinding[] => {
    if (found.length === 0) return [];
    const names = found.map(({ name }) => name);
    const isDoubtful = key === 'doubtful';
    return [
      {
        outcome: isDoubtful ? 'cannot-tell' : 'problem',
        severity: key === 'flagged' ? 'should' : 'must',
        messageKey: key,
        data: { what: sayThings(names), place: body?.label ?? 'the floor', ...ages, is: names.length === 1 ? 'is' : 'are' },
        subjects: [place, ...found.map(({ id }) => id)],
        part: key,
        ...(body && { at: body.center }),
        ...(isDoubtful && {
          missing: names.map((name) => `try the real cylinder with the smallest piece of ${name}, and mark what you found`),
        }),
      },
    ];
  };
  return [...finding('fits', of('fits')), ...finding('flagged', of('flagged')), ...finding('doubtful', of('doubtful'))];
}

/** One for the room: a list that nobody has filled in would fill the sheet. */
function notKnown(trays: readonly SceneTray[]): RuleFinding[] {
  const found = trays.map((tray) => tray.material).filter((material) => verdictOf(material) === 'notKnown');
  if (found.length === 0) return [];
  const names = found.map(({ name }) => name);
  return [
    {
      outcome: 'cannot-tell',
      severity: 'must',
      messageKey: 'notKnown',
      data: { count: found.length, what: sayThings(names) },
      subjects: ['classroom'],
      part: 'notKnown',
      missing: [`measure the smallest loose piece of ${sayThings(names)}, or say whether there are small parts`],
    },
  ];
}

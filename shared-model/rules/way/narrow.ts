import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { type AccessFigures, accessFigures, shortfallOf } from '../../measures/accessFigures.ts';
import type { Narrow } from '../../measures/narrow.ts';
import type { SeatStrip } from '../../measures/seats.ts';
import { sayChairs, sayPlace } from '../../measures/wayWords.ts';
import { isSameList } from '../../scene/kept.ts';
import type { Scene } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const narrow = defineRule({
  id: 'way/narrow',
  asks: 'Is there a narrow place on the ways?',
  why: 'One narrow place holds up everybody whose way leads through it, and makes the others go round.',
  tier: 'live',
  sources: ['A01', 'A02', 'B09', 'class rule'],
  options: z.strictObject({}),
  messages: {
    holds: 'It is {width} wide {place}, for {length}; {needed} is needed on the way to {what}.{chairs}{kept}{behind}',
    detour:
      'It is {width} wide {place}, for {length}. Every front is reached another way, so it holds nobody up; somebody who needs {needed} goes round.{chairs}{kept}{behind}',
    walls: 'Where it is narrow is not known: the walls cross each other or enclose nothing.',
    door: 'Which narrow places matter is not known: no door or passage is drawn.',
  },
  judge({ scene, measures }): RuleResult {
    if (!scene.room.isSound) return unknown('walls', 'walls that close and do not cross');
    const places = measures.ways().narrow;
    const figures = accessFigures(scene);
    if (places.length === 0) return scene.bodies.length === 0 ? doesNotApply : { applies: true, findings: [] };
    if (!scene.room.openings.some((o) => o.isWayIn)) return unknown('door', 'where the doors and passages are');
    return {
      applies: true,
      findings: places.filter((p) => p.matters && !p.isPinch).map((place) => foundAt(scene, figures, measures.seatStrips(), place)),
    };
  },
});

/** What the words of a place hang on, besides the place itself. */
type Grounds = readonly [strips: readonly SeatStrip[], room: Scene['room'], one: unknown, other: unknown, needed: number];

const known = new WeakMap<Narrow, { readonly grounds: Grounds; readonly finding: RuleFinding }>();

/** In a crowded room hundreds of places hold nobody up; while something is dragged nearly all of them are those of before. */
function foundAt(scene: Scene, figures: AccessFigures, strips: readonly SeatStrip[], place: Narrow): RuleFinding {
  if (place.holdsBack.length > 0) return judgePlace(scene, figures, strips, place);
  const [one, other] = place.between;
  const grounds: Grounds = [strips, scene.room, scene.bodyById.get(one), scene.bodyById.get(other), figures.routeWidth];
  const before = known.get(place);
  if (before && isSameList(before.grounds, grounds)) return before.finding;
  const finding = judgePlace(scene, figures, strips, place);
  known.set(place, { grounds, finding });
  return finding;
}

function unknown(messageKey: 'walls' | 'door', missing: string): RuleResult {
  return {
    applies: true,
    findings: [{ outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] }],
  };
}

function judgePlace(scene: Scene, figures: AccessFigures, strips: readonly SeatStrip[], found: Narrow): RuleFinding {
  const { holdsBack } = found;
  // A place with a single stretch has its own length, round corners too; of several only the one on the way counts.
  const { gap, between, width, length, at } = found.members.length > 1 && found.heldAt ? found.heldAt : found;
  const short = holdsBack.length > 0 ? shortfallOf(width, figures) : null;
  // A piece first: it is what somebody would move.
  const [one, other] = between;
  const subjects = one === other ? [one] : one.startsWith('wall:') && !other.startsWith('wall:') ? [other, one] : [one, other];
  const needed = mm(short?.needed ?? figures.routeWidth);
  const place = sayPlace(scene, one, other);
  const measured = mm(width);
  // Between two corners there is no length to speak of.
  const { chairs, kept, behind } = sayChairs(strips, [
    { id: one, x: gap.ax, y: gap.ay },
    { id: other, x: gap.bx, y: gap.by },
  ]);
  const along = length < 10 ? 'one step' : mm(length);
  const outcome = 'problem';
  if (!short)
    return {
      outcome,
      severity: 'note',
      messageKey: 'detour',
      data: { width: measured, length: along, needed, place, chairs, kept, behind },
      subjects,
      measured,
      needed,
      at,
    };
  const data = { width: measured, length: along, needed, place, what: sayHeld(holdsBack), chairs, kept, behind };
  return { outcome, severity: short.severity, messageKey: 'holds', data, subjects, measured, needed, at };
}

function sayHeld(ways: Narrow['holdsBack']): string {
  const [first, ...others] = new Set(ways.map((way) => way.target.label));
  if (others.length === 0) return first ?? '';
  return others.length === 1 ? `${first} and ${others[0]}` : `${first} and ${others.length} others`;
}

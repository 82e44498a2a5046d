import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { type AccessFigures, accessFigures, shortfallOf } from '../../measures/accessFigures.ts';
import type { SeatStrip } from '../../measures/seats.ts';
import { targetsOf } from '../../measures/targets.ts';
import type { Way } from '../../measures/ways.ts';
import { sayChairs, sayOpening, sayPlace, sayTarget } from '../../measures/wayWords.ts';
import type { Scene } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** Below this a front counts as covered: rounding only. */
const WHOLE = 1 - 1e-6;

export const width = defineRule({
  id: 'way/width',
  asks: 'Is the way to every front wide enough?',
  why: 'A child who carries a tray, or uses a wheelchair, chooses only what she can get to without squeezing past others.',
  tier: 'live',
  sources: ['A01', 'A02', 'B09', 'B11', 'class rule'],
  options: z.strictObject({}),
  messages: {
    none: 'No way leads from a door to {to}.',
    narrow: 'The way from {from} to {to} is {width} wide at its narrowest, {place}; {needed} is needed.{chairs}{kept}{behind}',
    covered: 'Only {share} of {to} can be come up to over a width of {needed}.',
    walls: 'How wide the ways are is not known: the walls cross each other or enclose nothing.',
    door: 'How wide the ways are is not known: no door or passage is drawn.',
  },
  judge({ scene, measures }): RuleResult {
    const doors = scene.room.openings.filter((o) => o.isWayIn);
    const targets = targetsOf(scene, 'in use', measures.seatStrips()).filter((t) => t.kind !== 'door' || doors.length > 1);
    if (targets.length === 0) return doesNotApply;
    if (!scene.room.isSound) return unknown('walls', 'walls that close and do not cross');
    const figures = accessFigures(scene);
    if (doors.length === 0) return unknown('door', 'where the doors and passages are');
    return { applies: true, findings: once(measures.ways().ways).flatMap((way) => judgeWay(scene, figures, measures.seatStrips(), way)) };
  },
});

function unknown(messageKey: 'walls' | 'door', missing: string): RuleResult {
  return {
    applies: true,
    findings: [{ outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] }],
  };
}

/** Ways that have a start; of the two ways between two doors the first. */
function once(ways: readonly Way[]): Way[] {
  const seen = new Set<string>();
  return ways.filter((way) => {
    if (way.from === null) return false;
    if (way.target.kind !== 'door') return true;
    const pair = [way.from, way.to].sort().join(' ');
    if (seen.has(pair)) return false;
    seen.add(pair);
    return true;
  });
}

function judgeWay(scene: Scene, figures: AccessFigures, strips: readonly SeatStrip[], way: Way): RuleFinding[] {
  const short = shortfallOf(way.judged, figures);
  const isShare = !short && way.target.kind === 'shelf' && way.share < WHOLE;
  if (!short && !isShare) return [];
  const { judged, from } = way;
  const to = sayTarget(way.target);
  const outcome = 'problem';
  const subjects = from === null ? [way.to] : [way.to, from];
  const part = way.side || undefined;
  const at = way.judgedAt ?? undefined;
  if (!short) {
    const measured = { value: way.share, unit: 'share' } as const;
    const data = { to, share: measured, needed: mm(figures.routeWidth) };
    const needed = { value: 1, unit: 'share' } as const;
    return [{ outcome, severity: 'should', messageKey: 'covered', data, subjects, part, measured, needed, at }];
  }
  const measured = mm(judged);
  const needed = mm(short.needed);
  const [one, other] = way.judgedBetween;
  if (judged === 0 || !one || !other || from === null)
    return [{ outcome, severity: short.severity, messageKey: 'none', data: { to }, subjects, part, measured, needed, at }];
  const { chairs, kept, behind } = sayChairs(strips, way.judgedBetween);
  const data = {
    to,
    from: sayOpening(scene, from),
    width: measured,
    needed,
    place: sayPlace(scene, one.id, other.id),
    chairs,
    kept,
    behind,
  };
  return [{ outcome, severity: short.severity, messageKey: 'narrow', data, subjects, part, measured, needed, at }];
}

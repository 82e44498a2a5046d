import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import type { Traverse } from '../../geometry/traverse.ts';
import { length, type Point, turn } from '../../geometry/vec.ts';
import { type Closure, measureClosure } from '../../measures/closure.ts';
import type { Scene } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** mm: corners this near to where the spread puts them count as spread. */
const SPREAD = 1;

const options = z.strictObject({
  /** mm that typed walls may miss their beginning by */
  allowed: z.number().min(0).max(1000).default(20),
  /** degrees that each typed turn may be off */
  turnError: z.number().min(0).max(45).default(1),
  /** share of the perimeter up to which the error is spread; more is a mistake, not an error */
  spreadable: z.number().min(0).max(1).default(0.01),
});
type Options = z.output<typeof options>;

export const closure = defineRule({
  id: 'survey/closure',
  asks: 'Do the walls as taped meet where they began?',
  why: 'If the walls do not close, one was measured or typed wrong, and what fits on the plan may not fit in the room.',
  tier: 'live',
  sources: ['class rule'],
  options,
  messages: {
    open: 'The walls as taped end {by} {direction} of where they began, 1 in {ratio} of the whole {perimeter}. Spread over the walls in proportion to their lengths they close.',
    mistake:
      'The walls as taped end {by} {direction} of where they began, 1 in {ratio} of the whole {perimeter}: too much for the tape.{suspect} Tape again.',
    turns: 'The turns as typed add up to {sum} degrees instead of {full}: one was typed wrong, perhaps a corner that turns the other way.',
    diagonal:
      'From corner {from} to corner {to} was taped as {taped}; the walls make it {made}. A corner is not as square as typed, or a wall is wrong.',
    wallMissing: 'Whether the walls close is not known: some were not taped.',
    gone: 'Some of what was taped begins or ends at a corner that is gone.',
  },
  judge({ scene, options: chosen }): RuleResult {
    const found = measureClosure(scene);
    if (!found) return doesNotApply;
    const ofWalls = walls(scene, found, chosen);
    // Against walls that are wrong a diagonal says nothing.
    const isWrong = ofWalls.some(({ messageKey }) => messageKey !== 'open');
    return { applies: true, findings: [...unknown(found), ...ofWalls, ...(isWrong ? [] : diagonals(scene, found, chosen.allowed))] };
  },
});

const should = { outcome: 'problem', severity: 'should' } as const;

function unknown({ missing, gone }: Closure): RuleFinding[] {
  const cannotTell = { outcome: 'cannot-tell', severity: 'should', data: {}, subjects: ['room'] } as const;
  const findings: RuleFinding[] = [];
  if (missing.length > 0)
    findings.push({
      ...cannotTell,
      messageKey: 'wallMissing',
      part: 'missing',
      missing: missing.map((id) => `tape the wall from corner ${id}`),
    });
  if (gone.length > 0)
    findings.push({
      ...cannotTell,
      messageKey: 'gone',
      part: 'gone',
      missing: gone.map((id) => `tape again what began or ended at corner ${id}`),
    });
  return findings;
}

function walls(scene: Scene, found: Closure, { allowed, turnError, spreadable }: Options): RuleFinding[] {
  const { traverse, spread, off } = found;
  if (!traverse) return [];
  const { corners } = scene.classroom.room;
  if (Math.abs(traverse.turnError) > turnError * corners.length + 1e-9) return [turnsFinding(traverse)];
  const by = length(traverse.misclosure);
  if (by <= allowed) return [];
  const isMistake = by > spreadable * traverse.perimeter;
  // Once it is spread the drawing holds as well as the tape does.
  if (!isMistake && off <= SPREAD) return [];
  const suspect = traverse.suspect === null ? undefined : corners[traverse.suspect];
  const first = corners[0];
  return [
    {
      ...should,
      messageKey: isMistake ? 'mistake' : 'open',
      data: {
        by: mm(by),
        direction: sayDirection(turn(traverse.misclosure, firstHeading(scene))),
        ratio: Math.round(traverse.perimeter / by),
        perimeter: mm(traverse.perimeter),
        suspect: suspect ? ` The wall from corner ${suspect.id} runs that way: look at its length first.` : '',
      },
      subjects: ['room'],
      measured: mm(by),
      needed: mm(allowed),
      ...(first && { at: { x: first.x, y: first.y } }),
      ...(!isMistake && {
        fix: { label: `Do it: spread it over the ${corners.length} walls`, edits: [{ do: 'move-corners', corners: [...spread] }] },
      }),
    },
  ];
}

function turnsFinding({ turned, turnError }: Traverse): RuleFinding {
  const data = { sum: roundTenth(turned), full: roundTenth(turned - turnError) };
  return { ...should, messageKey: 'turns', data, subjects: ['room'], part: 'turns' };
}
const roundTenth = (degrees: number): number => Math.round(degrees * 10) / 10;

/** Degrees clockwise from +x at which the first wall is drawn. */
function firstHeading(scene: Scene): number {
  const [first, second] = scene.classroom.room.corners;
  return first && second ? (Math.atan2(second.y - first.y, second.x - first.x) * 180) / Math.PI : 0;
}

const directions = ['right', 'below right', 'below', 'below left', 'left', 'above left', 'above', 'above right'];
/** "below right" and so on, as it lies on the plan (y down). */
function sayDirection({ x, y }: Point): string {
  const eighth = Math.round(((Math.atan2(y, x) * 180) / Math.PI + 360) / 45) % 8;
  return directions[eighth] ?? '';
}

function diagonals(scene: Scene, found: Closure, allowed: number): RuleFinding[] {
  const { corners } = scene.classroom.room;
  return found.diagonals.flatMap(({ from, to, taped, made }): RuleFinding[] => {
    if (Math.abs(taped - made) <= allowed) return [];
    const at = corners.find((corner) => corner.id === from);
    return [
      {
        ...should,
        messageKey: 'diagonal',
        data: { from, to, taped: mm(taped), made: mm(made) },
        subjects: ['room'],
        part: `${from}-${to}`,
        measured: mm(made),
        needed: mm(taped),
        ...(at && { at: { x: at.x, y: at.y } }),
      },
    ];
  });
}

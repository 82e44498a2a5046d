import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import type { RuleFinding } from '../../findings/finding.ts';
import { shiftsInside } from '../../geometry/withinRing.ts';
import { clearShift } from '../../measures/clearShift.ts';
import { measureOutside, type Outside } from '../../measures/outside.ts';
import { cachedParts } from '../../measures/overlaps.ts';
import { measureWallFaults, type WallFaults } from '../../measures/wallFaults.ts';
import type { Scene } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** mm: a way back longer than the shortest by more than this is no simple fix */
const DETOUR = 500;
/** After this many findings no more ways back are worked out. */
const MOST_FIXES = 40;

export const outside = defineRule({
  id: 'survey/outside',
  asks: 'Does everything stand within the walls?',
  why: 'A piece drawn through a wall, a door wider than its wall or walls that cross mean that something was measured or typed wrong. What is then said of walkways, floor and places would be wrong too.',
  tier: 'settle',
  sources: ['class rule'],
  options: z.strictObject({
    /** mm a thing may reach into a wall and still count as touching it */
    touching: z.number().min(0).max(50).default(1),
  }),
  messages: {
    piece: '{thing} reaches through the wall: it has to move {by} to stand inside.',
    tooBig: '{thing} does not fit into the room as it is turned: it reaches {by} outside.',
    fixture: '{thing} lies outside the walls, {by} from where it would stand inside.',
    builtIn: '{thing} reaches {by} into the wall. Right if it is built in there.',
    opening: '{thing} does not fit on its wall: it reaches {by} past the end.',
    openings: '{thing} and {other} share {by} of one wall.',
    nowhere: '{thing} is on no wall: the corner it starts from is gone.',
    walls: 'Two walls cross: the one from corner {one} and the one from corner {other}. What lies inside cannot be told.',
    corner: 'The wall from corner {one} has no length: a corner stands twice. What lies inside cannot be told.',
    noFloor: 'The walls enclose no floor.',
  },
  judge({ scene, options }) {
    const faults = measureWallFaults(scene);
    const things = measureOutside(scene, options.touching).map((found, index) => thingFinding(scene, found, index < MOST_FIXES));
    return { applies: true, findings: [...wallFindings(scene, faults), ...openingFindings(faults, options.touching), ...things] };
  },
});

const problem = { outcome: 'problem', severity: 'must' } as const;
const cannotTell = { outcome: 'cannot-tell', severity: 'must' } as const;

function wallFindings(scene: Scene, { crossed }: WallFaults): RuleFinding[] {
  if (scene.room.isSound) return [];
  if (crossed.length === 0) {
    const missing = ['the room’s corners'];
    return [{ ...cannotTell, messageKey: 'noFloor', data: {}, subjects: ['room'], missing }];
  }
  return crossed.map(({ one, other, at }): RuleFinding => {
    const isCorner = one === other;
    return {
      ...cannotTell,
      messageKey: isCorner ? 'corner' : 'walls',
      data: { one: one.corner, other: other.corner },
      subjects: isCorner ? [one.id] : [one.id, other.id],
      at,
      missing: [isCorner ? `where corner ${one.corner} really is` : `how the walls from ${one.corner} and ${other.corner} really run`],
    };
  });
}

function openingFindings({ tooLong, shared, nowhere }: WallFaults, touching: number): RuleFinding[] {
  const called = ({ label }: WallFaults['tooLong'][number]['opening']): string => label;
  const measure = (by: number) => ({ measured: mm(by), needed: mm(0) });
  return [
    ...nowhere.map((id): RuleFinding => ({ ...problem, messageKey: 'nowhere', data: { thing: id }, subjects: [id] })),
    ...tooLong.flatMap(({ opening, by, at }): RuleFinding[] =>
      by > touching
        ? [{ ...problem, messageKey: 'opening', data: { thing: called(opening), by: mm(by) }, subjects: [opening.id], at, ...measure(by) }]
        : [],
    ),
    ...shared.flatMap(({ one, other, by, at }): RuleFinding[] => {
      if (by <= touching) return [];
      const data = { thing: called(one), other: called(other), by: mm(by) };
      return [{ ...problem, messageKey: 'openings', data, subjects: [one.id, other.id], at, ...measure(by) }];
    }),
  ];
}

function thingFinding(scene: Scene, { body, by, fits, isWholly }: Outside, withFix: boolean): RuleFinding {
  const isBuiltIn = body.source === 'fixture' && !isWholly;
  const fix = withFix && fits && body.piece ? bringInside(scene, body, by) : null;
  return {
    outcome: 'problem',
    severity: isBuiltIn ? 'note' : 'must',
    messageKey: isBuiltIn ? 'builtIn' : body.source === 'fixture' ? 'fixture' : fits ? 'piece' : 'tooBig',
    data: { thing: body.label, by: mm(by) },
    subjects: [body.id],
    measured: mm(by),
    needed: mm(0),
    at: body.center,
    ...(fix && { fix }),
  };
}

function bringInside(scene: Scene, body: Outside['body'], by: number): Fix | null {
  const parts = cachedParts()(body);
  const shift = clearShift(scene, body, shiftsInside(scene.room.outline, parts), by + DETOUR);
  if (!shift) return null;
  return {
    label: `Do it: bring ${body.label} back inside`,
    edits: shift.to.map(({ piece, x, y }) => ({ do: 'move-piece', piece, x, y })),
  };
}

import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { gripAbove } from '../../measures/traySpot.ts';
import type { Scene, SceneBoard, SceneSide, SceneTray } from '../../scene/types.ts';
import { advisoryReach } from '../../standards/advisoryReach.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** mm above the floor; null: the advised figure of the ages enrolled */
  high: z.number().positive().max(3000).nullable().default(null),
  low: z.number().min(0).max(3000).nullable().default(null),
});

/** Where a child in a wheelchair reaches, mm above the floor. */
interface Band {
  readonly high: number;
  readonly low: number;
  readonly isLowPrinted: boolean;
}

export const advisory = defineRule({
  id: 'reach/advisory',
  asks: 'Does a child in a wheelchair reach what is on the shelf?',
  why: 'From a wheelchair a child bends less and reaches less far up and down. What lies outside that band it has to ask for.',
  tier: 'live',
  sources: ['A15'],
  options,
  messages: {
    outside:
      '{what} on {shelf}: gripped outside the band from {low} to {high} that is advised for children of these ages in wheelchairs. Advised, not required; your local authority decides.',
    notKnown: '{shelf}: how high some things are gripped is not known ({what}).',
    noAges: 'Which band is advised depends on the ages of the children.',
  },
  judge({ scene, options: chosen }): RuleResult {
    const sides = scene.sides.filter((side) => side.isForChildren && side.boards.some((board) => board.trays.length > 0));
    if (!scene.classroom.access.wheelchair || sides.length === 0) return doesNotApply;
    const band = bandOf(scene, chosen);
    if (!band) return { applies: true, findings: [noAges] };
    const pieces = [...new Set(sides.map((side) => side.piece))];
    return {
      applies: true,
      findings: pieces.flatMap((piece) =>
        shelfFindings(
          sides.filter((side) => side.piece === piece),
          band,
        ),
      ),
    };
  },
});

const noAges: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'note',
  messageKey: 'noAges',
  data: {},
  subjects: ['classroom'],
  missing: ['give the ages of the children'],
};

/** The lowest high and the highest low of the ages enrolled. Below and beyond the table its nearest row holds. */
function bandOf(scene: Scene, { high, low }: z.output<typeof options>): Band | null {
  if (high !== null && low !== null) return { high, low, isLowPrinted: false };
  const enrolled = scene.classroom.children.groups.filter((group) => group.count > 0);
  if (enrolled.length === 0) return null;
  const [first, , last] = advisoryReach;
  const rows = enrolled.flatMap(({ fromMonths, toMonths }) => {
    const found = advisoryReach.filter((row) => fromMonths < row.toMonths && Math.max(toMonths, fromMonths + 1) > row.fromMonths);
    return found.length > 0 ? found : [fromMonths < first.fromMonths ? first : last];
  });
  return {
    high: high ?? Math.min(...rows.map((row) => row.high)),
    low: low ?? Math.max(...rows.map((row) => row.low)),
    isLowPrinted: low === null,
  };
}

interface Gripped {
  readonly tray: SceneTray;
  /** mm above the floor by which it lies outside, and the grip; null: not known whether it does */
  readonly by: number | null;
  readonly height: number;
  readonly needed: number;
}

function shelfFindings(sides: readonly SceneSide[], band: Band): RuleFinding[] {
  const [side] = sides;
  if (!side) return [];
  const all = sides.flatMap(({ boards }) => boards).flatMap((board) => board.trays.flatMap((tray) => outsideBand(board, tray, band)));
  const outside = all.filter(({ by }) => by !== null).sort((p, q) => (q.by ?? 0) - (p.by ?? 0));
  const open = all.filter(({ by }) => by === null);
  const [worst] = outside;
  const common = { severity: 'note', subjects: [side.piece.id], at: side.body.center } as const;
  const names = (list: readonly Gripped[]): string => sayThings(list.map(({ tray }) => tray.material.name));
  const findings: RuleFinding[] = [];
  if (worst)
    findings.push({
      ...common,
      outcome: 'problem',
      messageKey: 'outside',
      trays: outside.map(({ tray }) => tray.material.id),
      data: { shelf: side.body.label, what: names(outside), low: mm(band.low), high: mm(band.high) },
      measured: mm(worst.height),
      needed: mm(worst.needed),
    });
  if (open.length > 0)
    findings.push({
      ...common,
      outcome: 'cannot-tell',
      messageKey: 'notKnown',
      data: { shelf: side.body.label, what: names(open) },
      part: 'unknown',
      missing: open.map(({ tray }) =>
        tray.board?.surface === null ? `give ${side.body.label} its height` : `give ${tray.material.name} its height`,
      ),
    });
  return findings;
}

/** Nothing for what lies in the band. */
function outsideBand({ surface }: SceneBoard, tray: SceneTray, { high, low, isLowPrinted }: Band): Gripped[] {
  if (surface === null) return [{ tray, by: null, height: 0, needed: low }];
  const grip = gripAbove(tray.material);
  const [least, most] = [surface + grip.low, surface + grip.high];
  if (!meets(high, least)) return [{ tray, by: least - high, height: least, needed: high }];
  if (!meets(most, low, isLowPrinted)) return [{ tray, by: low - most, height: most, needed: low }];
  const isSure = meets(high, most) && meets(least, low, isLowPrinted);
  return isSure ? [] : [{ tray, by: null, height: least, needed: low }];
}

import { z } from 'zod';
import { doesNotApply, type MessageValue, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardPart, sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { type BoardRoom, boardRoom, type Excess } from '../../measures/boardRoom.ts';
import { spaceBoard } from '../../measures/boardSpacing.ts';
import { TRAY_GAP } from '../../measures/order/classOptions.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { sayLength } from '../../units/sayLength.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** mm between neighbouring trays, for two hands */
  trayGap: z.number().min(0).max(1000).default(TRAY_GAP),
});

export const crowded = defineRule({
  id: 'order/crowded',
  asks: 'Has every tray its place and room for two hands?',
  why: 'A child takes a tray and puts it back alone only if nothing stands in its place and two hands fit beside it.',
  tier: 'live',
  sources: ['class rule'],
  options,
  messages: {
    wide: 'Move {what} to a longer board: it is on {board}, which is {by} too short. {room}',
    deep: 'Move {what} to a deeper board, or turn it: it is on {board}, which is {by} not deep enough. {room}',
    tall: 'Give {what} more height: the space above it, on {board}, is {by} too low. {room}',
    overlap: '{todo}: {what} on {board} stand in the same place, by {by}. {room}',
    hang: '{todo}: {what} on {board} stands {by} over the {end}. {room}',
    close: '{todo}: {what} on {board} stand {gap} apart; two hands want {wanted}. {room}',
    notMeasured: '{what} on {board}: whether there is room is not known.',
  },
  judge({ scene, options: { trayGap } }): RuleResult {
    const boards = scene.sides
      .filter((side) => side.isForChildren)
      .flatMap((side) => side.boards.filter((board) => board.trays.length > 0).map((board) => boardRoom(scene, side, board, trayGap)));
    if (boards.length === 0) return doesNotApply;
    return { applies: true, findings: boards.flatMap((room) => [...crowdedFinding(scene, room, trayGap), ...unknownFinding(room)]) };
  },
});

interface Fault {
  readonly key: 'wide' | 'deep' | 'tall' | 'overlap' | 'hang' | 'close';
  readonly trays: readonly SceneTray[];
  readonly data: Readonly<Record<string, MessageValue>>;
  readonly measured: number;
  readonly needed: number;
}

/** One finding a board: what cannot be mended by pushing comes first, then what stands worst. */
function crowdedFinding(scene: Scene, room: BoardRoom, gap: number): RuleFinding[] {
  const fault = faultOf(room, gap);
  if (!fault) return [];
  const { side, board } = room;
  const isNote = fault.key === 'close';
  const spaced = spaceBoard(room, gap);
  // Packing closer than the wanted gap mends an overlap, but not the gap itself.
  const isMended = spaced !== null && spaced.placements.length > 0 && (!isNote || spaced.gap >= gap);
  const all = `Do it: ${spaced && spaced.gap >= gap ? 'space' : 'pack'} ${sayBoard(side, board)}`;
  return [
    {
      outcome: 'problem',
      severity: isNote ? 'note' : 'should',
      messageKey: fault.key,
      data: {
        ...fault.data,
        todo: room.spare < 0 ? 'Take a tray off' : isNote ? 'Space the trays' : 'Push the trays along',
        what: sayThings(fault.trays.map(({ material }) => material.name)),
        board: sayBoard(side, board),
        room: sayRoom(scene, room),
      },
      subjects: [side.piece.id, ...fault.trays.map(({ material }) => material.id)],
      part: `${boardPart(board)}${isNote ? '/gap' : ''}`,
      measured: mm(fault.measured),
      needed: mm(fault.needed),
      at: side.body.center,
      ...(isMended && { fix: { label: all, edits: spaced.placements.map((placement) => ({ do: 'place', placement })) } }),
    },
  ];
}

function faultOf({ board, wide, deep, tall, overlaps, hangs, close }: BoardRoom, gap: number): Fault | null {
  const [longest, deepest, highest, stickingOut] = [worst(wide), worst(deep), worst(tall), worst(hangs)];
  const size = (key: 'wide' | 'deep' | 'tall', found: readonly Excess[], by: number, needed: number): Fault => ({
    key,
    trays: found.map(({ tray }) => tray),
    data: { by: mm(by) },
    measured: needed + by,
    needed,
  });
  if (highest) return size('tall', tall, highest.by, board.clear ?? 0);
  if (longest) return size('wide', wide, longest.by, board.width);
  if (deepest) return size('deep', deep, deepest.by, board.depth);
  const worstOverlap = worst(overlaps);
  if (worstOverlap) {
    const trays = [...new Set(overlaps.flatMap(({ left, right }) => [left, right]))];
    return { key: 'overlap', trays, data: { by: mm(worstOverlap.by) }, measured: -worstOverlap.by, needed: 0 };
  }
  if (stickingOut) {
    const trays = hangs.filter(({ end }) => end === stickingOut.end).map(({ tray }) => tray);
    return { key: 'hang', trays, data: { by: mm(stickingOut.by), end: stickingOut.end }, measured: stickingOut.by, needed: 0 };
  }
  const closest = close.reduce<number | null>((least, { by }) => (least === null ? by : Math.min(least, by)), null);
  if (closest === null) return null;
  const trays = [...new Set(close.flatMap(({ left, right }) => [left, right]))];
  const apart = Math.max(0, closest);
  return { key: 'close', trays, data: { gap: mm(apart), wanted: mm(gap) }, measured: apart, needed: gap };
}

function worst<T extends { readonly by: number }>(found: readonly T[]): T | undefined {
  return found.reduce<T | undefined>((most, one) => (most === undefined || one.by > most.by ? one : most), undefined);
}

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** How much room the board has when its trays stand side by side. */
function sayRoom(scene: Scene, { more, spare }: BoardRoom): string {
  if (spare < 0) return `All together it takes ${sayLength(-spare, scene.classroom.display.units)} more board.`;
  if (more === 0) return 'With its trays spaced the board is full.';
  return `With its trays spaced, ${counts[more] ?? more} more would fit.`;
}

function unknownFinding({ side, board, unknown }: BoardRoom): RuleFinding[] {
  if (unknown.length === 0) return [];
  return [
    {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'notMeasured',
      data: { what: sayThings(unknown.map(({ tray }) => tray.material.name)), board: sayBoard(side, board) },
      subjects: [side.piece.id],
      part: `${boardPart(board)}/unknown`,
      at: side.body.center,
      missing: unknown.map(({ tray, lacks }) => `give ${tray.material.name} its ${lacks.join(' and ')}`),
    },
  ];
}

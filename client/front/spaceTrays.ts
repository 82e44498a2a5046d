import { type BoardRoom, boardRoom } from '#model/measures/boardRoom.ts';
import { spaceBoard } from '#model/measures/boardSpacing.ts';
import { trayGapOf } from '#model/measures/order/classOptions.ts';
import { sideBySide } from '#model/measures/order/packing.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { Session } from '../session/types.ts';
import { sayList } from '../text/sayList.ts';

/** evenly: the same room between neighbours; close: side by side from where reading begins. */
export type TraySpacing = 'evenly' | 'close';

/** Spaces the trays of one board in the order they stand in: one step to take back, and said aloud. `level` null: the shelf's top. */
export function spaceTrays(session: Session, side: SceneSide, level: string | null, how: TraySpacing): void {
  session.announce(space(session, side, level, how));
}

/** @returns what is said of it */
function space(session: Session, side: SceneSide, level: string | null, how: TraySpacing): string {
  const scene = session.scene();
  const { units, readingDirection } = session.classroom().display;
  const now = scene.sides.find((each) => each.piece.id === side.piece.id && each.side === side.side);
  const board = now?.boards.find((each) => (each.level?.id ?? null) === level);
  if (!now || !board) return 'The board is gone; somebody took it out.';
  const gap = trayGapOf(scene.classroom);
  const room = boardRoom(scene, now, board, gap);
  const end = readingDirection === 'rtl' ? 'right' : 'left';
  const spaced = spaceBoard(room, gap, how === 'close' ? (widths, boardWidth) => sideBySide(widths, boardWidth, end) : undefined);
  if (!spaced) return `The trays stay as they are: ${whyNot(room, (mm) => sayLength(mm, units))}.`;
  if (spaced.placements.length === 0) return 'The trays stand so already.';
  session.commands.applyEdits(
    session.arrangement().id,
    spaced.placements.map((placement) => ({ do: 'place', placement })),
  );
  return how === 'close'
    ? `The trays stand side by side from the ${end}.`
    : `The trays stand evenly, ${sayLength(spaced.gap, units)} apart.`;
}

function whyNot({ wide, tall, unknown, overlaps, spare, board }: BoardRoom, say: (mm: number) => string): string {
  const names = (trays: readonly { readonly tray: { readonly material: { readonly name: string } } }[]): string =>
    sayList(trays.map(({ tray }) => tray.material.name));
  if (unknown.length > 0) return `the size of ${names(unknown)} is not known`;
  if (tall.length > 0) return `${names(tall)} ${tall.length === 1 ? 'is' : 'are'} too high for the board`;
  if (wide.length > 0) return `${names(wide)} ${wide.length === 1 ? 'is' : 'are'} longer than the board`;
  if (overlaps.some(({ left, right }) => left.board !== right.board)) return 'what stands on the other side reaches through to this one';
  return `side by side they are longer than the board of ${say(board.width)}${spare < 0 ? '' : ', or deeper'}`;
}

import { boardWord } from '../scene/boardWord.ts';
import type { SceneBoard, SceneSide } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';

const sideWords: Readonly<Record<Side, string>> = {
  front: 'at the front',
  back: 'at the back',
  left: 'on the left',
  right: 'on the right',
};

/** A board as people say it: "the top board of Sensorial A", "the middle board of shelf s2, at the back". */
export function sayBoard(side: SceneSide, board: SceneBoard): string {
  const where = side.piece.sides.length > 1 ? `, ${sideWords[side.side]}` : '';
  return `${whichBoard(side, board)} of ${side.body.label}${where}`;
}

/** Boards of one sentence after the other: a shelf is named once, then "the low board there". */
export function boardsInTurn(): typeof sayBoard {
  let last: SceneSide | null = null;
  return (side, board) => {
    const said = side === last ? `${whichBoard(side, board)} there` : sayBoard(side, board);
    last = side;
    return said;
  };
}

function whichBoard(side: SceneSide, board: SceneBoard): string {
  if (board.level === null) return 'the top';
  const boards = side.boards.filter((b) => b.level !== null);
  const index = boards.indexOf(board);
  return boards.length === 1 ? 'the board' : `the ${boardWord(index, boards.length)} board`;
}

/** "Pink tower", "Pink tower and Red rods", "Pink tower, Red rods and 3 more". */
export function sayThings(names: readonly string[]): string {
  if (names.length <= 2) return names.join(' and ');
  if (names.length === 3) return `${names[0]}, ${names[1]} and ${names[2]}`;
  return `${names[0]}, ${names[1]} and ${names.length - 2} more`;
}

/** A strand inside a sentence: "sight, dimension" for "sight: dimension", whose colon would be one of several. */
export const sayStrand = (strand: string): string => strand.replaceAll(': ', ', ');

/** Tells findings on one board from those on another; part of their identity. */
export const boardPart = (board: SceneBoard): string => `${board.side}/${board.level?.id ?? 'top'}`;

import { reportMats } from '../../measures/mats.ts';
import { measuresOf } from '../../measures/measures.ts';
import { boardsForChildren } from '../../measures/reach.ts';
import { judgeTake } from '../../measures/trayReach.ts';
import { narrow } from '../../rules/way/narrow.ts';
import { buildScene } from '../../scene/build.ts';
import type { Classroom } from '../../schema/types.ts';
import { judgeRule } from '../judgeRule.ts';

/** What a move changes for the children, told of one arrangement. null: cannot be told. */
export interface MoveFigures {
  readonly arrangement: string;
  /** Places too narrow that hold somebody back. */
  readonly narrow: number | null;
  /** Found to lie on the floor at once, and where. */
  readonly mats: ReturnType<typeof reportMats>;
  /** Seats and the mats found. */
  readonly work: number | null;
  /** Trays that would have to move for everything to stand in step. */
  readonly outOfStep: number;
  /** Trays that the smallest child cannot take. */
  readonly tooHigh: number | null;
  /** m² of floor that no adult sees from where they watch */
  readonly hidden: number | null;
}

/** As the checks reckon them. Takes about as long as all checks together. */
export function moveFigures(classroom: Classroom, arrangement: string): MoveFigures {
  const scene = buildScene(classroom, arrangement);
  const measures = measuresOf(scene);
  const places = judgeRule(narrow, scene, measures).findings;
  const work = measures.workPlaces();
  const sight = measures.sight();
  return {
    arrangement,
    narrow: places.some(({ outcome }) => outcome === 'cannot-tell') ? null : places.filter(({ severity }) => severity !== 'note').length,
    mats: reportMats(measures.mats()),
    work: work.mats && work.least,
    outOfStep: measures
      .order()
      .strands()
      .reduce((sum, { placed, inOrder }) => sum + placed - inOrder, 0),
    tooHigh: tooHighIn(),
    hidden: sight && sight.eyes.length > 0 ? sight.hiddenArea : null,
  };

  function tooHighIn(): number | null {
    const { smallest, spotOf } = measures.reach();
    if (!smallest) return null;
    return boardsForChildren(scene).reduce((sum, { side, board }) => {
      const beyond = board.trays.filter((tray) => judgeTake(smallest, spotOf(side, board, tray), tray).verdict === 'beyond');
      return sum + beyond.length;
    }, 0);
  }
}

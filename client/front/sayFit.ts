import type { FitOption } from '#model/measures/fit.ts';
import { sayOrdinal } from '#model/scene/boardWord.ts';
import type { Scene } from '#model/scene/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { capital } from '../text/sayList.ts';
import { boardName } from './boardNames.ts';
import { sideName } from './shelfNames.ts';

function boardOf({ side, board }: FitOption): string {
  const real = side.boards.filter((each) => each.level !== null);
  return board.level === null ? 'on top' : boardName(real.indexOf(board), real.length).toLowerCase();
}

/** "shelf 7, low" */
export const sayFitPlace = (scene: Scene, option: FitOption): string => `${sideName(scene, option.side)}, ${boardOf(option)}`;

/** "Shelf 7, low board, 3rd place" */
export function fitTitle(scene: Scene, option: FitOption): string {
  const board = option.board.level === null ? 'on top' : `${boardOf(option)} board`;
  const isLast = option.ahead === null && option.behind !== null;
  const place = isLast ? 'last place' : `${sayOrdinal(option.place)} place`;
  return `${capital(sideName(scene, option.side))}, ${board}, ${place}`;
}

/** Said where a class leaves the order of practical life alone: nothing is in step or out of step there. */
export const NOT_JUDGED = 'practical life is not judged in this class';

/** In a few words what speaks against it; "in step" when nothing does. */
export function fitWord(option: FitOption): string {
  if (option.fits === 'no')
    return option.shortBy.width > 0 ? 'too narrow' : option.shortBy.depth > 0 ? 'not deep enough' : 'not high enough';
  if (!option.isInReach) return 'out of reach';
  if (option.isStepJudged && !option.isInStep) return 'out of step';
  if (option.cuts !== null) return 'breaks the thread';
  const good = option.isStepJudged ? 'in step' : 'fits';
  return option.fits === 'pushed' ? `${good}, with room made` : good;
}

/** One line for a material that no board takes: the board that comes nearest, and what it is short of there. Null: some board takes it. */
export function sayNowhere(scene: Scene, options: readonly FitOption[], units: LengthUnits): string | null {
  if (options.length === 0 || options.some(({ fits }) => fits !== 'no')) return null;
  const most = ({ shortBy }: FitOption): number => Math.max(shortBy.width, shortBy.depth, shortBy.height);
  const nearest = options.reduce((best, option) => (most(option) < most(best) ? option : best));
  return `Fits no board: ${short(nearest, units)} on the nearest, ${sayFitPlace(scene, nearest)}.`;
}

function short({ shortBy }: FitOption, units: LengthUnits): string {
  return [
    shortBy.width > 0 ? `${sayLength(shortBy.width, units)} too narrow with all trays side by side` : '',
    shortBy.depth > 0 ? `${sayLength(shortBy.depth, units)} not deep enough` : '',
    shortBy.height > 0 ? `${sayLength(shortBy.height, units)} not high enough` : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** Why, in a sentence or two. */
export function fitWhy(option: FitOption, units: LengthUnits): string {
  const { behind, ahead, board } = option;
  const at = board.surface === null ? '' : ` Board at ${sayLength(board.surface, units)}.`;
  if (option.fits === 'no') return `${capital(short(option, units))}.`;
  const parts = [
    behind ? `right after ${behind.name}` : ahead ? `right before ${ahead.name}` : 'alone on its board',
    option.isTurned ? 'turned a quarter' : '',
    option.fits === 'pushed'
      ? `${option.placements.length === 2 ? 'one other slides' : `${option.placements.length - 1} others slide`} along`
      : '',
  ].filter((part) => part !== '');
  const against = [
    option.isInReach ? '' : ' The smallest child does not reach it there.',
    option.isInStep ? '' : sayWrongSide(option),
    option.cuts === null ? '' : ` It cuts the thread of ${option.cuts}.`,
  ].join('');
  const isSaid = option.isInStep && option.isStepJudged;
  return `${isSaid ? `In step: ${parts.join(', ')}` : capital(parts.join(', '))}.${against}${at}`;
}

function sayWrongSide({ isStepJudged, wrongSide }: FitOption): string {
  const what = !wrongSide
    ? ' Something stands on the wrong side of it there'
    : wrongSide.comes === 'before'
      ? ` ${wrongSide.material.name} comes before it, but would stand after it`
      : ` ${wrongSide.material.name} comes after it, but would stand before it`;
  return isStepJudged ? `${what}.` : `${what}; ${NOT_JUDGED}.`;
}

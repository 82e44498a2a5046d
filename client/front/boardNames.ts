import { boardWord } from '#model/scene/boardWord.ts';
import { capital } from '../text/sayList.ts';

/** How people call the boards of a shelf side, top first: Top, Middle, Low; with more boards 2nd, 3rd … between. */
export const boardName = (index: number, count: number): string => capital(boardWord(index, count));

import { moveFigures } from '#model/analysis/moveDay/figures.ts';
import { sayError } from '../worker/sayError.ts';
import type { MoveAnswer, MoveQuestion } from './messages.ts';

/** Answers as each arrangement is reckoned. Apart from the worker so that tests can run it. */
export function figuresAtDesk({ move, classroom }: MoveQuestion, tell: (answer: MoveAnswer) => void): void {
  try {
    for (const arrangement of move) tell({ figures: moveFigures(classroom, arrangement) });
  } catch (error) {
    tell({ failure: sayError(error) });
  }
}

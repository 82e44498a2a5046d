import { BROKEN_OFF, type FileProblem } from '#model/schema/readFile.ts';

export interface FileProblemWords {
  readonly text: string;
  /** The same for whoever mends files by hand. */
  readonly technical: string;
}

/** What keeps a file from being opened, for a guide. Null: it is a classroom file, and what is wrong stands at a place in it. */
export function sayFileProblem(problem: FileProblem): FileProblemWords | null {
  const technical = `At ${problem.path}: found ${problem.found}, expected ${problem.expected}.`;
  const text = inWords(problem);
  return text === null ? null : { text, technical };
}

function inWords({ path, found, expected }: FileProblem): string | null {
  if (path === '(file)') {
    if (found === 'an empty file') return `This file is empty. ${CHOOSE}`;
    if (expected.startsWith('at most ') && found.endsWith(' MB'))
      return `This file is too large for a classroom file: ${found}, ${expected}. ${CHOOSE}`;
    if (found === UNREAD) return 'The browser could not read this file. It may have been moved or be open elsewhere: choose it again.';
    if (found === BROKEN_OFF)
      return `This file begins as a classroom but breaks off or is damaged further on. Copy or save it again from where it came, and choose that.`;
    return found === 'text that is no JSON' || expected === 'a JSON object' ? `This is not a classroom file. ${CHOOSE}` : null;
  }
  return path === 'format' ? `This is not a classroom file. ${CHOOSE}` : null;
}

/** What was found where the browser gives no text. */
export const UNREAD = 'a file that the browser could not read';

const CHOOSE = 'Choose a file that "Save a file" made on a classroom\'s sheet.';

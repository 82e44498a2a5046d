import type { Mark } from './marks.ts';
import type { PageDraft } from './pageTypes.ts';
import type { Box, Sheet } from './paper.ts';
import { STRIP } from './titleBlock.ts';

const GAP = 2.5;

/** What a sheet with the title along its foot leaves free. */
export const aboveStrip = ({ inner }: Sheet): Box => ({ ...inner, height: inner.height - STRIP - GAP });

const stripBox = ({ inner }: Sheet): Box => ({ ...inner, y: inner.y + inner.height - STRIP, height: STRIP });

export const stripPage = (sheet: Sheet, what: string, marks: readonly Mark[], scale: number | null = null, scaleNote = ''): PageDraft => ({
  what,
  sheet,
  scale,
  scaleNote,
  marks,
  title: { form: 'strip', box: stripBox(sheet) },
});

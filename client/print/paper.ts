/** Sizes in mm, upright: ISO 216 (A4, A3) and ANSI/ASME Y14.1 (Letter = A, Tabloid = B). */
const papers = {
  a4: { name: 'A4', short: 210, long: 297 },
  a3: { name: 'A3', short: 297, long: 420 },
  letter: { name: 'US Letter', short: 215.9, long: 279.4 },
  tabloid: { name: 'US Tabloid', short: 279.4, long: 431.8 },
} as const;

export type PaperName = keyof typeof papers;
export const paperNames = Object.keys(papers) as PaperName[];
export const sayPaper = (paper: PaperName): string => papers[paper].name;

/** mm that stay free at every edge: more than the printers of offices need */
const MARGIN = 8;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Sheet {
  readonly paper: PaperName;
  readonly isLying: boolean;
  /** mm */
  readonly width: number;
  readonly height: number;
  /** What may be drawn on. */
  readonly inner: Box;
}

export function sheetOf(paper: PaperName, isLying: boolean): Sheet {
  const { short, long } = papers[paper];
  const [width, height] = isLying ? [long, short] : [short, long];
  return { paper, isLying, width, height, inner: { x: MARGIN, y: MARGIN, width: width - 2 * MARGIN, height: height - 2 * MARGIN } };
}

/** Room for a drawing and its lists on one sheet. */
export const isLarge = (paper: PaperName): boolean => papers[paper].short > 250;

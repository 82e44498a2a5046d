import { openPdf, pageTexts } from './pdfText.ts';

/** PDF 32000-1:2008, 8.3.2.3: a unit of user space is 1/72 inch. */
const MM_PER_POINT = 25.4 / 72;

interface Path {
  /** mm from the page's upper left corner, in the order in which they are drawn */
  readonly points: readonly Point[];
  readonly width: number;
  readonly height: number;
  readonly isFilled: boolean;
  readonly isClosed: boolean;
  /** red, green, blue of line or filling, 0 to 1 */
  readonly colour: string;
}

interface PdfPage {
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly text: string;
  readonly paths: readonly Path[];
  /** Every colour in which letters are written. */
  readonly inks: ReadonlySet<string>;
}

type Matrix = readonly [number, number, number, number, number, number];

/** p: first the inner matrix, then the outer (8.3.4). */
const times = (p: Matrix, q: Matrix): Matrix => [
  p[0] * q[0] + p[1] * q[2],
  p[0] * q[1] + p[1] * q[3],
  p[2] * q[0] + p[3] * q[2],
  p[2] * q[1] + p[3] * q[3],
  p[4] * q[0] + p[5] * q[2] + q[4],
  p[4] * q[1] + p[5] * q[3] + q[5],
];

/** Lines and words of each page of a PDF as Chromium prints it, from what is drawn, in mm of paper. */
export function measurePdf(file: Buffer): PdfPage[] {
  const pdf = openPdf(file);
  const texts = pageTexts(pdf);
  return pdf.pages.map(({ page, content }, i) => {
    const [, , wide = 0, high = 0] = (/\/MediaBox \[([^\]]*)\]/.exec(page)?.[1] ?? '').split(' ').map(Number);
    return { width: wide * MM_PER_POINT, height: high * MM_PER_POINT, text: texts[i] ?? '', ...drawnIn(content, high) };
  });
}

interface State {
  readonly matrix: Matrix;
  readonly fill: string;
  readonly stroke: string;
}
interface Point {
  readonly x: number;
  readonly y: number;
}

function drawnIn(content: string, high: number): Pick<PdfPage, 'paths' | 'inks'> {
  const paths: Path[] = [];
  const inks = new Set<string>();
  const kept: State[] = [];
  let state: State = { matrix: [1, 0, 0, 1, 0, 0], fill: '0 0 0', stroke: '0 0 0' };
  let subs: { points: Point[]; isClosed: boolean }[] = [];
  const point = (x: number, y: number): Point => {
    const [a, b, c, d, e, f] = state.matrix;
    return { x: (a * x + c * y + e) * MM_PER_POINT, y: (high - (b * x + d * y + f)) * MM_PER_POINT };
  };
  const put = (isFilled: boolean): void => {
    const colour = isFilled ? state.fill : state.stroke;
    paths.push(...subs.map(({ points, isClosed }) => ({ points, isClosed, isFilled, colour, ...extentOf(points) })));
    subs = [];
  };
  for (const [operator, numbers] of operatorsOf(content)) {
    const [x = 0, y = 0, w = 0, h = 0, x3 = 0, y3 = 0] = numbers;
    const last = subs.at(-1);
    // PDF 32000-1:2008, annex A: the operators that Chromium writes.
    if (operator === 'q') kept.push(state);
    else if (operator === 'Q') state = kept.pop() ?? state;
    else if (operator === 'cm') state = { ...state, matrix: times([x, y, w, h, x3, y3], state.matrix) };
    else if (operator === 'rg') state = { ...state, fill: numbers.join(' ') };
    else if (operator === 'RG') state = { ...state, stroke: numbers.join(' ') };
    else if (operator === 'm') subs.push({ points: [point(x, y)], isClosed: false });
    else if (operator === 'l') last?.points.push(point(x, y));
    else if (operator === 'c') last?.points.push(point(x3, y3));
    else if (operator === 'h' && last) last.isClosed = true;
    else if (operator === 're') subs.push({ points: [point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)], isClosed: true });
    else if (operator === 'S') put(false);
    else if (operator === 'f' || operator === 'f*') put(true);
    else if (operator === 'n') subs = [];
    else if (operator === 'Tj') inks.add(state.fill);
  }
  return { paths, inks };
}

function extentOf(points: readonly Point[]): { width: number; height: number } {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

/** Each operator with the numbers before it. Letters are written in hexadecimal, names begin with a slash: neither counts. */
function* operatorsOf(content: string): Generator<[operator: string, numbers: number[]]> {
  let numbers: number[] = [];
  for (const [token] of content.matchAll(/<[0-9A-Fa-f]*>|\/\S+|[-+]?(?:\d+\.?\d*|\.\d+)|[A-Za-z]+\*?/g)) {
    if (token.startsWith('<') || token.startsWith('/')) continue;
    if (/^[-+.\d]/.test(token)) numbers.push(Number(token));
    else {
      yield [token, numbers];
      numbers = [];
    }
  }
}

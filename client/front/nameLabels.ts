import { capital } from '../text/sayList.ts';
import { MOST_LINES } from './drawnSizes.ts';
import { toldApart } from './toldApart.ts';

/** px that a text takes on the drawing */
export type MeasureText = (text: string) => number;

/** A tray on its board as its name needs it (px along the board). */
export interface Named {
  readonly id: string;
  readonly name: string;
  readonly middle: number;
  /** Lines of text that have room below the board from one place along it to another (px). */
  readonly linesAt: (from: number, to: number) => number;
  /** Written under the name where there is room, such as "to shelf 6"; "": nothing. */
  readonly aside: string;
  /** It is written like this and no other way, whatever stands below; the others make room beside it. */
  readonly whole?: { readonly lines: readonly string[]; readonly width: number };
}

export interface NameLabel {
  readonly id: string;
  readonly lines: readonly string[];
  /** px: left end and width */
  readonly x: number;
  readonly width: number;
  readonly isWhole: boolean;
}

interface Form {
  readonly lines: readonly string[];
  readonly width: number;
  readonly isWhole: boolean;
  /** What is lost by writing this instead of the whole name. */
  readonly cost: number;
}

/** px between two names */
const BETWEEN = 5;
/** px from the shelf's ends: its panels stay whole */
const INSIDE = 4;
/** A name left out costs more than any shorter one; so does one under which another name stands. */
const LEFT_OUT = 40;
const UNDER_ANOTHER = 14;
const MORE = '…';

/**
 * The names below one board, none over another and none cut inside a word. By rule: the whole name, or what tells it
 * from its family where others of it stand on this side; where that has no room, its first words with "…" while no
 * other thing begins like that, else nothing, and where it can be no other name under it: its number and the list say which it is. Each name hangs below the
 * middle of its tray.
 * @param trays of one board, in any order
 * @param names of all things on this side
 * @param width px of the shelf
 */
export function nameLabels(trays: readonly Named[], names: readonly string[], width: number, measure: MeasureText): NameLabel[] {
  const inLine = [...trays].sort((p, q) => p.middle - q.middle);
  const placed = cheapest(
    inLine.map((tray) => ({ tray, forms: tray.whole ? [{ ...tray.whole, isWhole: true, cost: 0 }] : formsOf(tray, names, measure) })),
    width,
  );
  let next = Infinity;
  return placed
    .reverse()
    .map(({ tray, form, x: earliest }) => {
      const x = Math.min(centred(tray, form, earliest), next - BETWEEN - form.width, width - INSIDE - form.width);
      next = x;
      return { id: tray.id, lines: form.lines, x, width: form.width, isWhole: form.isWhole };
    })
    .reverse()
    .filter(({ lines }) => lines.length > 0);
}

/** px: under the middle of its tray, or as near to it as lies right of `earliest` */
const centred = ({ middle }: Named, { width }: Form, earliest: number): number => Math.max(earliest, middle - width / 2);

/** A name as it is written within a width and so many lines, by the same rule; null: it has no room. */
export function nameWithin(
  name: string,
  names: readonly string[],
  width: number,
  lines: number,
  measure: MeasureText,
): readonly string[] | null {
  const forms = formsOf({ id: '', name, middle: 0, linesAt: () => lines, aside: '' }, names, measure);
  const fitting = forms.filter((form) => form.width <= width && form.lines.length <= lines).sort((p, q) => p.cost - q.cost);
  return fitting[0]?.lines ?? null;
}

/** The name of one thing alone, whole, in lines as even as its words allow. */
export function wholeName(name: string, most: number, measure: MeasureText): { readonly lines: readonly string[]; readonly width: number } {
  for (let lines = 1; lines <= 9; lines++) {
    const form = wrapped(name, lines, measure);
    if (form && (form.width <= most || lines === 9)) return form;
  }
  return { lines: [name], width: measure(name) };
}

function formsOf({ name, aside }: Named, names: readonly string[], measure: MeasureText): Form[] {
  const others = names.filter((other) => other !== name);
  const family = /^[^:]+: /.exec(name)?.[0];
  const isOfFamily = family !== undefined && others.some((other) => other.startsWith(family));
  const texts = new Map<string, number>([[name, isOfFamily ? 2 : 0]]);
  toldApart(name, names, (text) => {
    if (!texts.has(text)) texts.set(text, texts.size);
    return false;
  });
  // The start of the name, or of what it is in its family.
  for (const text of new Set([name, kindOf(name)])) {
    const words = text.split(/\s+/);
    for (let count = words.length - 1; count >= 1; count--) {
      const start = words.slice(0, count).join(' ').replace(TAIL, '');
      if (start.length < 3 || others.some((other) => other.startsWith(start) || kindOf(other).startsWith(start))) continue;
      const short = start + MORE;
      if (!texts.has(short)) texts.set(short, 4 + (8 * (words.length - count)) / words.length);
    }
  }
  return [...texts].flatMap(([text, cost]) =>
    // The same words in one line, two, three: what is wide and low or narrow and high.
    Array.from({ length: MOST_LINES }, (_, i) => wrapped(text, i + 1, measure)).flatMap((broken, i): Form[] => {
      if (!broken) return [];
      const form = { ...broken, cost: cost + i * 0.01, isWhole: text === name };
      if (aside === '') return [form];
      // Where there is a line less, the list says where it belongs.
      const width = Math.max(form.width, measure(aside));
      return [
        { ...form, lines: [...form.lines, aside], width },
        { ...form, cost: form.cost + 1 },
      ];
    }),
  );
}

/** "Zip" of "Dressing frame: zip"; else the name. */
const kindOf = (name: string): string => capital(name.replace(/^[^:]+: /, ''));

/** What a shortened name does not end in. */
const TAIL = /(?:[,:;(]|\s(?:and|or|with|in|on|of|the|a|an|for|to|by|from))*[,:;\s]*$/i;

interface Broken {
  readonly lines: readonly string[];
  readonly width: number;
}

/** By the measure that the widths are of: screen and paper have their own. */
const knownOf = new WeakMap<MeasureText, Map<string, Broken | null>>();

/** A text broken at blanks into so many lines (at most), as narrow as can be; null: it does not go. Kept, since the same names are broken at every frame of a drag. */
function wrapped(text: string, lines: number, measure: MeasureText): Broken | null {
  const known = knownOf.get(measure) ?? new Map<string, Broken | null>();
  knownOf.set(measure, known);
  const key = `${lines} ${text}`;
  const kept = known.get(key);
  if (kept !== undefined) return kept;
  const words = text.split(/\s+/).filter((word) => word !== '');
  const widths = new Set(words.flatMap((_, i) => words.slice(i).map((__, k) => measure(words.slice(i, i + k + 1).join(' ')))));
  let found: Broken | null = null;
  for (const width of [...widths].sort((p, q) => p - q)) {
    const broken = greedy(words, width, measure);
    if (!broken || broken.length > lines) continue;
    found = { lines: broken, width };
    break;
  }
  if (known.size > 20_000) known.clear();
  known.set(key, found);
  return found;
}

function greedy(words: readonly string[], width: number, measure: MeasureText): string[] | null {
  const lines: string[] = [];
  for (const word of words) {
    if (measure(word) > width) return null;
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

interface Placed {
  readonly tray: Named;
  readonly form: Form;
  /** px: as far left as it can lie */
  readonly x: number;
}

interface State {
  readonly cost: number;
  readonly end: number;
  readonly placed: Placed | null;
  readonly before: State | null;
}

const NOTHING: Form = { lines: [], width: 0, isWhole: false, cost: LEFT_OUT };

/** Without its name: best with no other name under it, which would be read as its own. */
function leftOut(tray: Named, state: State, count: number): State[] {
  const cost = state.cost + (tray.whole ? LEFT_OUT * count : LEFT_OUT);
  const under: State = { cost: cost + UNDER_ANOTHER, end: state.end, placed: null, before: state };
  if (tray.middle < state.end + BETWEEN) return [under];
  return [{ cost, end: tray.middle, placed: { tray, form: NOTHING, x: tray.middle }, before: state }, under];
}

/** The forms of the least cost with which all find room, as far left as they go; kept are the states that none beats in both cost and end. */
function cheapest(trays: readonly { readonly tray: Named; readonly forms: readonly Form[] }[], width: number): Placed[] {
  let states: State[] = [{ cost: 0, end: INSIDE - BETWEEN, placed: null, before: null }];
  for (const { tray, forms } of trays) {
    const next = states.flatMap((state): State[] => [
      ...leftOut(tray, state, trays.length),
      ...forms.flatMap((form): State[] => {
        const x = Math.max(tray.middle - form.width, state.end + BETWEEN);
        const end = x + form.width;
        if (x > tray.middle || end > width - INSIDE) return [];
        const rightmost = Math.min(width - INSIDE, centred(tray, form, x) + form.width);
        if (!tray.whole && form.lines.length > tray.linesAt(x, rightmost)) return [];
        return [{ cost: state.cost + form.cost, end, placed: { tray, form, x }, before: state }];
      }),
    ]);
    next.sort((p, q) => p.cost - q.cost || p.end - q.end);
    states = [];
    for (const state of next) if (states.length === 0 || state.end < (states.at(-1) as State).end - 1e-6) states.push(state);
  }
  const result: Placed[] = [];
  for (let state: State | null = states[0] ?? null; state; state = state.before) if (state.placed) result.unshift(state.placed);
  return result;
}

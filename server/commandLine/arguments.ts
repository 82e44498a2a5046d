import { parseArgs } from 'node:util';
import type { MendOnly } from '#model/analysis/mendWays/mendWays.ts';
import type { Point } from '#model/geometry/vec.ts';

/** An end of a way: a place on the plan (mm), or the id of a door or a piece. */
export type WayEnd = Point | string;

export interface CheckArguments {
  readonly file: string;
  readonly json: boolean;
  readonly arrangement: string | null;
  readonly units: 'metric' | 'imperial' | null;
  readonly strict: boolean;
  /** seconds to spend on proving the mat count; null: not asked */
  readonly prove: number | null;
  /** Look for the smallest move that widens every way, without moving the pieces of `keep`. */
  readonly mend: { readonly keep: readonly string[]; readonly only?: MendOnly } | null;
  readonly way: { readonly from: WayEnd; readonly to: WayEnd; readonly body: number } | null;
}

export const usage = `Checks a classroom file.

  npm run -s check -- FILE [options]        FILE may be - for standard input

  --json               the report as JSON instead of text
  --arrangement ID     the arrangement to check (default: the current one)
  --units imperial     lengths in feet and inches (or metric)
  --strict             a check that cannot tell also fails
  --prove SECONDS      spend up to so many seconds on proving the mat count
  --way FROM:TO        how wide a disc can travel between two ends, each X,Y (mm) or the id
                       of a door or a piece, and how long the shortest walk is
  --body MM            diameter of the walking body for --way (default 0)
  --mend               the smallest move of up to three pieces that widens every way, if there is
                       one, as text or with --json as JSON
  --keep ID,ID         pieces that --mend leaves where they are
  --narrowest          --mend looks after the narrowest place alone
  --must               --mend makes ways only as wide as they must be

Ends with 0 when nothing must be mended, 1 when something must, 2 when the file cannot be read.`;

/** @throws Error, in words for the person, when the arguments cannot be understood */
export function readArguments(argv: readonly string[]): CheckArguments | 'help' {
  const { values, positionals } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      arrangement: { type: 'string' },
      units: { type: 'string' },
      strict: { type: 'boolean', default: false },
      prove: { type: 'string' },
      way: { type: 'string' },
      body: { type: 'string' },
      mend: { type: 'boolean', default: false },
      keep: { type: 'string' },
      narrowest: { type: 'boolean', default: false },
      must: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) return 'help';
  const [file, ...more] = positionals;
  if (file === undefined) throw new Error('Say which classroom file to check.');
  if (more.length > 0) throw new Error(`One file at a time: found "${more.join('" and "')}" beside "${file}".`);
  if (values.units !== undefined && values.units !== 'metric' && values.units !== 'imperial')
    throw new Error(`--units is metric or imperial, found "${values.units}".`);
  if (values.body !== undefined && values.way === undefined) throw new Error('--body goes with --way FROM:TO.');
  if (values.keep !== undefined && !values.mend) throw new Error('--keep goes with --mend.');
  if (values.narrowest && !values.mend) throw new Error('--narrowest goes with --mend.');
  if (values.must && !values.mend) throw new Error('--must goes with --mend.');
  if (values.must && values.narrowest) throw new Error('--must and --narrowest are asked one at a time.');
  if (values.mend && values.way !== undefined) throw new Error('--mend and --way are asked one at a time.');
  return {
    file,
    json: values.json,
    arrangement: values.arrangement ?? null,
    units: values.units ?? null,
    strict: values.strict,
    prove: values.prove === undefined ? null : readNumber('--prove', values.prove),
    mend: values.mend ? { keep: readIds(values.keep ?? ''), ...onlyOf(values) } : null,
    way:
      values.way === undefined ? null : { ...readWay(values.way), body: values.body === undefined ? 0 : readNumber('--body', values.body) },
  };
}

const readIds = (text: string): string[] => text.split(',').flatMap((id) => (id.trim() === '' ? [] : [id.trim()]));

function readWay(text: string): { from: WayEnd; to: WayEnd } {
  const [from, to, ...more] = text.split(':');
  if (!from || !to || more.length > 0) throw new Error(`--way is FROM:TO, found "${text}".`);
  return { from: readEnd(from), to: readEnd(to) };
}

function readEnd(text: string): WayEnd {
  if (!text.includes(',')) return text;
  const [x, y, ...more] = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (more.length > 0 || !Number.isFinite(x) || !Number.isFinite(y))
    throw new Error(`An end of --way is X,Y in mm or an id, found "${text}".`);
  return { x: x as number, y: y as number };
}

function readNumber(name: string, text: string): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(value) || value < 0) throw new Error(`${name} is a number, zero or more, found "${text}".`);
  return value;
}

const onlyOf = ({ narrowest, must }: { narrowest: boolean; must: boolean }): { only?: MendOnly } =>
  narrowest ? { only: 'narrowest' } : must ? { only: 'must' } : {};

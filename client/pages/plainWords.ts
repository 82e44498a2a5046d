import { capital } from '../text/sayList.ts';
import { readSpans, type Span } from './readRulePage.ts';

/** A page is written for whoever keeps the check, too: which files hold it against its source is left out on the sheet. */
export function plainSpans(spans: readonly Span[]): Span[] {
  const text = spans.map((span) => (typeof span === 'string' ? span : `\`${span.code}\``)).join('');
  return readSpans(text.replaceAll(/\s*\(tests?: `tests\/[^`]*`\)/g, '').replaceAll(/\s*Tests?: (?=`tests\/)(?:`[^`]*`|[^`.])*\./g, ''));
}

/** One line of what a class may set, taken apart: "`perToilet`, `perBasin` (mm, as the rule set says): the class's own …". */
export interface OptionLine {
  /** Names of the settings in the file. */
  readonly names: readonly string[];
  /** "mm", "degrees"; "": a plain figure */
  readonly unit: string;
  /** "as the rule set says", where the default is no figure; null: it is one. */
  readonly byDefault: string | null;
  /** What it sets, with a capital. */
  readonly says: readonly Span[];
}

/** null: the line tells of no setting. */
export function optionLine(spans: readonly Span[], known: readonly string[]): OptionLine | null {
  const text = plainSpans(spans)
    .map((span) => (typeof span === 'string' ? span : `\`${span.code}\``))
    .join('');
  const [, head, inside, rest] = /^((?:`[\w]+`(?:, | and )?)+)\s*(?:\(([^)]*)\))?:\s*(.+)$/s.exec(text) ?? [];
  if (head === undefined || rest === undefined) return null;
  const names = [...head.matchAll(/`(\w+)`/g)].flatMap(([, name]) => (name !== undefined && known.includes(name) ? [name] : []));
  if (names.length === 0) return null;
  const parts = (inside ?? '').split(', ');
  const byDefault = parts.find((part) => part.startsWith('as ')) ?? null;
  const unit = parts.find((part) => part !== byDefault && !/^[\d.]+$/.test(part) && !words.has(part)) ?? '';
  return {
    names,
    unit: unit.replace(/^[\d.]+\s*/, ''),
    byDefault,
    says: readSpans(capital(rest)),
  };
}

const words = new Set(['true', 'false', 'none', 'on', 'off']);

/** Settings that share a line, told apart. */
const apart: Readonly<Record<string, string>> = { perToilet: 'to a toilet', perBasin: 'to a basin', high: 'highest', low: 'lowest' };

/** "In this class: no, the default." for each setting of a line. */
export function sayOption(
  { names, unit, byDefault }: OptionLine,
  own: Readonly<Record<string, unknown>>,
  defaults: Readonly<Record<string, unknown>>,
): string {
  const say = (value: unknown): string => {
    if (value === null || value === undefined) return byDefault ?? 'none';
    if (value === true || value === false) return value ? 'yes' : 'no';
    return `${String(value)}${unit === '' ? '' : ` ${unit}`}`;
  };
  const told = names.map((name) => {
    const [mine, usual] = [own[name], defaults[name]];
    const label = names.length > 1 ? `${apart[name] ?? name} ` : '';
    if (mine === undefined || mine === usual) return `${label}${say(usual)}, the default`;
    return `${label}${say(mine)}, a class rule; the default is ${say(usual)}`;
  });
  return `In this class: ${told.join('; ')}.`;
}

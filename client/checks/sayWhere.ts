import type { Finding } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { cellAt, neatlineBounds } from '../plan/neatline.ts';
import { pointedAt } from './pointOut.ts';

/** More shelves than this are not told one by one where the words name none. */
const FEW = 3;

const kept = new WeakMap<Finding, { readonly scene: Scene; readonly said: string }>();

/**
 * Where a finding is, for somebody who looks from its words to the plan: "at G4: shelf 1 Pouring, shelf 12 Land and living
 * things" by the neatline and by the numbers that the plan letters; "shelf 12" where it is about one. "": nowhere in particular.
 */
export function sayWhere(finding: Finding, scene: Scene): string {
  const known = kept.get(finding);
  if (known?.scene === scene) return known.said;
  const cell = finding.at ? `at ${cellAt(finding.at, neatlineBounds(scene.classroom.room.corners))}` : '';
  const said = [cell, sayNumbers(finding, scene)].filter(Boolean).join(': ');
  kept.set(finding, { scene, said });
  return said;
}

interface Named {
  readonly id: string;
  /** "12" */
  readonly number: string;
  readonly name: string;
}

function sayNumbers(finding: Finding, scene: Scene): string {
  const numbered = numberedThings(finding, scene);
  const named = namedIn(finding.message, numbered);
  // What is called by its number needs no other word for it.
  const told = named.filter(({ name, number }) => !hasWord(name, number.replace('T', '')));
  if (named.length > 0)
    return told.map((thing) => (named.length === 1 ? sayNumber(thing) : `${sayNumber(thing)} ${thing.name}`)).join(', ');
  const ofTrays = isOfTrays(finding) ? numbered : [];
  return ofTrays.length <= FEW ? ofTrays.map(sayNumber).join(', ') : '';
}

const sayNumber = ({ number }: Named): string => (number.startsWith('T') ? `table ${number}` : `shelf ${number}`);

const isOfTrays = ({ rule }: Finding): boolean => /^(order|reach)\//.test(rule);

/** Shelves and tables that the finding can mean by a name: those it is about, and on a way whatever stands beside it. */
function numberedThings(finding: Finding, scene: Scene): Named[] {
  const numbers = pieceNumbers(scene.classroom);
  const isOfWay = /^(way|exit)\//.test(finding.rule);
  const ids = isOfWay ? [...numbers.keys()] : pointedAt(finding, scene).things;
  return ids.flatMap((id) => {
    const number = numbers.get(id);
    const name = scene.bodyById.get(id)?.label;
    return number !== undefined && name ? [{ id, number, name }] : [];
  });
}

/** Those whose names stand in the words, in the order of the words; a name within a longer one is not meant. */
function namedIn(words: string, things: readonly Named[]): Named[] {
  let left = words;
  const found: { thing: Named; from: number }[] = [];
  for (const thing of [...things].sort((p, q) => q.name.length - p.name.length)) {
    const from = placeOf(left, thing.name);
    if (from < 0) continue;
    found.push({ thing, from });
    left = left.slice(0, from) + ' '.repeat(thing.name.length) + left.slice(from + thing.name.length);
  }
  return found.sort((p, q) => p.from - q.from).map(({ thing }) => thing);
}

const isLetter = (char: string | undefined): boolean => char !== undefined && /[\p{L}\p{N}]/u.test(char);

/** Where a name begins in a text, as words of its own; -1: nowhere. */
function placeOf(text: string, name: string): number {
  for (let from = text.indexOf(name); from >= 0; from = text.indexOf(name, from + 1))
    if (!isLetter(text[from - 1]) && !isLetter(text[from + name.length])) return from;
  return -1;
}

const hasWord = (text: string, word: string): boolean => placeOf(text, word) >= 0;

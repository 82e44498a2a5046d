import type { Scene, SceneSide } from '#model/scene/types.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Side } from '#model/schema/types.ts';
import { capital } from '../text/sayList.ts';

const sideWords: Readonly<Record<Side, string>> = { front: 'front', back: 'back', left: 'left side', right: 'right side' };

/** "shelf 7", "table T3": by the number it bears on the plan. */
export function shelfWords(scene: Scene, piece: string): string {
  const number = pieceNumbers(scene.classroom).get(piece);
  if (number?.startsWith('T')) return `table ${number}`;
  return number ? `shelf ${number}` : (scene.bodyById.get(piece)?.label ?? piece);
}

/** "shelf 7", or "shelf 7, back" where the shelf has more than one open side. */
export function sideName(scene: Scene, side: SceneSide): string {
  const words = shelfWords(scene, side.piece.id);
  return side.piece.sides.length > 1 ? `${words}, ${sideWords[side.side]}` : words;
}

/** "Sensorial A (shelf 1)": by its name, as findings call it, and its number on the plan; "shelf 1" where it has none. */
export function namedSide(scene: Scene, side: SceneSide): string {
  const words = sideName(scene, side);
  const { name } = side.piece;
  return name.trim() === '' || name.toLowerCase() === shelfWords(scene, side.piece.id) ? words : `${name} (${words})`;
}

export const sideWord = (side: Side): string => sideWords[side];

/** "7", or "7 back": for a place to let go. */
export function sideShort(scene: Scene, side: SceneSide): string {
  const number = pieceNumbers(scene.classroom).get(side.piece.id) ?? side.body.label;
  return side.piece.sides.length > 1 ? `${number} ${sideWords[side.side]}` : number;
}

/** "Shelf 7 · First numbers", for a list to choose from. */
export function sideTitle(scene: Scene, side: SceneSide): string {
  const name = side.piece.name.replace(/^\s*shelf\s*\d*\s*/i, '');
  const words = capital(sideName(scene, side));
  return name === '' ? words : `${words} · ${name}`;
}

import type { Scene } from '../../scene/types.ts';
import type { Material } from '../../schema/types.ts';
import { haveRoom, type Size } from './crateRoom.ts';
import { CRATE, TRAY_KG } from './practice.ts';
import { placeOf, type TrayPlace } from './trayChanges.ts';

/** Trays that travel together: of one area, back to one piece. */
interface Crate {
  /** "A", "B", … in the order in which they are filled again. */
  readonly letter: string;
  /** In the order in which they go back: as a child reads the shelf. */
  readonly materials: readonly string[];
  /** kg, without the crate; those of unknown mass counted as `TRAY_KG`. */
  readonly kg: number;
  readonly unknown: number;
  /** Where it is emptied; null: on the table. */
  readonly to: { readonly piece: string; readonly places: readonly TrayPlace[] } | null;
}

export interface Packed {
  readonly crates: readonly Crate[];
  /** Longer or wider than a crate: carried by hand. */
  readonly byHand: readonly string[];
}

/**
 * Trays packed in the order in which they go back, a crate closed when the next tray is too heavy or finds no room in it: the
 * fewest crates that keep the order.
 * @param mostKg kg in one crate; a tray that is heavier by itself has one of its own
 * @param shelves ids in the order in which they are filled
 */
export function packCrates(
  materials: readonly Material[],
  to: Scene,
  earlierId: (piece: string) => string,
  shelves: readonly string[],
  mostKg: number,
): Packed {
  const rank = readingRanks(to);
  const going = materials.map((material) => ({ material, place: placeOf(to.stands.get(material.id), earlierId) }));
  const shelfRank = (place: TrayPlace | null): number => {
    const at = place ? shelves.indexOf(place.piece) : -1;
    return at === -1 ? shelves.length : at;
  };
  going.sort(
    (p, q) =>
      shelfRank(p.place) - shelfRank(q.place) ||
      (rank.get(p.material.id) ?? Infinity) - (rank.get(q.material.id) ?? Infinity) ||
      (p.material.step ?? Infinity) - (q.material.step ?? Infinity) ||
      (p.material.id < q.material.id ? -1 : 1),
  );
  const byHand: string[] = [];
  const open: { area: string; piece: string | null; list: typeof going; kg: number; sizes: Size[] }[] = [];
  for (const one of going) {
    if (!fitsCrate(one.material)) {
      byHand.push(one.material.id);
      continue;
    }
    const kg = one.material.mass ?? TRAY_KG;
    const size = sidesOf(one.material);
    const piece = one.place?.piece ?? null;
    const last = open.at(-1);
    const isMore =
      last?.area === one.material.area &&
      last.piece === piece &&
      last.kg + kg <= mostKg + 1e-9 &&
      haveRoom([...last.sizes, size], [CRATE.long, CRATE.wide], CRATE.layers);
    if (last && isMore) {
      last.list.push(one);
      last.kg += kg;
      last.sizes.push(size);
    } else open.push({ area: one.material.area, piece, list: [one], kg, sizes: [size] });
  }
  const crates = open.map(({ piece, list, kg }, i): Crate => {
    const places = list.flatMap(({ place }) => place ?? []);
    return {
      letter: crateLetter(i),
      materials: list.map(({ material }) => material.id),
      kg,
      unknown: list.filter(({ material }) => material.mass === null).length,
      to: piece === null ? null : { piece, places },
    };
  });
  return { crates, byHand };
}

function readingRanks(scene: Scene): Map<string, number> {
  const ranks = new Map<string, number>();
  const isLeftFirst = scene.classroom.display.readingDirection === 'ltr';
  for (const { boards } of scene.sides)
    for (const { trays } of boards) for (const { material } of isLeftFirst ? trays : trays.toReversed()) ranks.set(material.id, ranks.size);
  return ranks;
}

const sidesOf = ({ width, depth }: Material): [number, number] => {
  const [p, q] = [width ?? 200, depth ?? 200];
  return [Math.max(p, q), Math.min(p, q)];
};

function fitsCrate(material: Material): boolean {
  const [long, wide] = sidesOf(material);
  return long <= CRATE.long && wide <= CRATE.wide;
}

/** 0 is "A", 25 "Z", 26 "AA". */
export function crateLetter(index: number): string {
  let letters = '';
  for (let rest = index; rest >= 0; rest = Math.floor(rest / 26) - 1) letters = String.fromCharCode(65 + (rest % 26)) + letters;
  return letters;
}

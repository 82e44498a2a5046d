import fc from 'fast-check';
import { absurdPieces, absurdPlacements, absurdShelves, absurdWalk, absurdWatch } from './furniture.ts';
import { each, maybe, word } from './numbers.ts';
import { absurdFigures, absurdMaterial, absurdPeople } from './people.ts';
import { absurdRoom, plainWalls } from './rooms.ts';

/** A classroom file that the schema accepts and nobody would make: what a slip of the hand or another program leaves. */
export type AbsurdFile = Readonly<Record<string, unknown>>;

const head = { format: 'lowshelf.classroom', version: 1 } as const;

/** Walls, doors and furniture that cannot be, the class as it may. */
export const absurdRooms: fc.Arbitrary<AbsurdFile> = fc
  .record({
    name: word,
    room: absurdRoom,
    pieces: absurdPieces,
    watch: absurdWatch,
    figures: fc.option(absurdFigures, { nil: {} }),
    people: absurdPeople,
  })
  .map(({ name, room, pieces, watch, figures, people }) => ({
    ...head,
    name,
    ...people,
    ...figures,
    room,
    arrangements: [{ id: 'a0', pieces, watch }],
  }));

/** Shelves, things and children that cannot be, in a plain room. */
export const absurdClasses: fc.Arbitrary<AbsurdFile> = fc
  .record({
    name: word,
    room: plainWalls,
    materials: each('m', 10, absurdMaterial),
    pieces: absurdShelves,
    placements: absurdPlacements,
    walk: absurdWalk,
    people: absurdPeople,
    figures: fc.option(absurdFigures, { nil: {} }),
    current: fc.constantFrom(null, 'a0', 'gone'),
  })
  .map(({ pieces, placements, walk, people, figures, ...rest }) => ({
    ...head,
    ...rest,
    ...people,
    ...figures,
    arrangements: [{ id: 'a0', pieces, placements, walk }],
  }));

/** Anything of both at once, in up to three arrangements. */
export const absurdThroughout: fc.Arbitrary<AbsurdFile> = fc
  .record({
    name: word,
    room: absurdRoom,
    materials: each('m', 6, absurdMaterial),
    arrangements: fc
      .array(fc.record({ pieces: absurdPieces, placements: absurdPlacements, walk: absurdWalk, watch: absurdWatch }), {
        minLength: 1,
        maxLength: 3,
      })
      .map((list) => list.map((one, i) => ({ id: `a${i}`, ...one }))),
    people: absurdPeople,
    figures: absurdFigures,
    current: maybe(fc.constantFrom('a0', 'a1', 'gone')),
  })
  .map(({ people, figures, ...rest }) => ({ ...head, ...people, ...figures, ...rest }));

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exportClassroom } from '#model/document/exportClassroom.ts';
import { openDocument } from '#model/document/openDocument.ts';
import type { ClassroomDocument } from '#model/document/types.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { furnished } from '../support/furnished.ts';
import { scriptedNetwork } from '../support/scriptedNetwork.ts';

type Act = (document: ClassroomDocument) => unknown;
const mm = fc.integer({ min: 0, max: 6000 });
const nth = fc.nat(7);
const pick = <T>(list: readonly T[], index: number): T | undefined => list[index % Math.max(1, list.length)];

/** What a person may do next; each picks among the things they see. */
const act: fc.Arbitrary<Act> = fc.oneof(
  fc.tuple(nth, mm, mm).map(
    ([i, x, y]): Act =>
      (d) =>
        onPiece(d, i, (a, p) => d.commands.movePiece(a, p, { x, y, rotation: x % 360 })),
  ),
  fc.tuple(nth, mm).map(
    ([i, width]): Act =>
      (d) =>
        onPiece(d, i, (a, p) => d.commands.changePiece(a, p, { width: width + 1, seatSides: { back: width % 4 } })),
  ),
  nth.map(
    (i): Act =>
      (d) =>
        onPiece(d, i, (a, p) => d.commands.putAwayPiece(a, p)),
  ),
  fc.tuple(mm, mm).map(
    ([x, y]): Act =>
      (d) =>
        d.commands.addPiece(here(d), { kind: 'shelf', x, y, width: 900, depth: 300 }),
  ),
  fc.tuple(nth, mm).map(
    ([i, surface]): Act =>
      (d) =>
        onPiece(d, i, (a, p) => d.commands.addLevel(a, p, { surface })),
  ),
  fc.tuple(nth, nth, nth, mm).map(
    ([i, j, k, x]): Act =>
      (d) =>
        onPiece(d, i, (a, p) => {
          const material = pick(d.read().materials, j)?.id;
          const piece = d
            .read()
            .arrangements.find(({ id }) => id === a)
            ?.pieces.find(({ id }) => id === p);
          const level = pick(piece?.levels ?? [], k)?.id ?? null;
          if (material) d.commands.place(a, { material, piece: p, side: 'front', level, x, y: 0, turned: false });
        }),
  ),
  nth.map(
    (i): Act =>
      (d) =>
        d.commands.putAway(here(d), pick(d.read().materials, i)?.id ?? ''),
  ),
  nth.map(
    (i): Act =>
      (d) =>
        d.read().materials.length > 1 && d.commands.removeMaterial(pick(d.read().materials, i)?.id ?? ''),
  ),
  fc.constant<Act>((d) => d.commands.addMaterial({ name: 'new' })),
  fc.tuple(nth, mm, mm).map(
    ([i, x, y]): Act =>
      (d) =>
        d.commands.moveCorner(pick(d.read().room.corners, i)?.id ?? '', { x, y }),
  ),
  fc.tuple(nth, fc.boolean()).map(
    ([i, more]): Act =>
      (d) => {
        const corners = d.read().room.corners;
        const without = corners.filter((_, at) => at !== i % corners.length);
        if (more)
          d.commands.setCorners(
            [...corners.slice(0, i), { id: `c${i}-${corners.length}`, x: i, y: i }, ...corners.slice(i)].filter(unique),
          );
        else if (without.length >= 3) d.commands.setCorners(without);
      },
  ),
  fc.array(nth, { maxLength: 3 }).map(
    (order): Act =>
      (d) =>
        d.commands.setWalk(
          here(d),
          order.flatMap((i) => {
            const piece = pick(d.read().arrangements[0]?.pieces ?? [], i)?.id;
            return piece ? [{ piece, side: 'front' as const }] : [];
          }),
        ),
  ),
  fc.constant<Act>((d) =>
    d.commands.addArrangement('copy', d.read().arrangements[0]?.id === 'empty' ? undefined : d.read().arrangements[0]?.id),
  ),
  nth.map(
    (i): Act =>
      (d) =>
        d.commands.removeArrangement(pick(d.read().arrangements, i)?.id ?? ''),
  ),
  nth.map(
    (i): Act =>
      (d) =>
        d.commands.setCurrent(pick(d.read().arrangements, i)?.id ?? ''),
  ),
  mm.map(
    (x): Act =>
      (d) =>
        d.commands.changeClass({ name: `class ${x}`, access: { ...d.read().access, routeWidth: x + 1 } }),
  ),
  mm.map(
    (x): Act =>
      (d) =>
        d.commands.leave(`way/width:s${x % 3}`, `reason ${x}`, 'AB'),
  ),
  fc.constant<Act>((d) => d.undo.takeBack()),
  fc.constant<Act>((d) => d.undo.doAgain()),
);

const here = (d: ClassroomDocument): string => d.read().arrangements[0]?.id ?? '';
const unique = <T extends { id: string }>(entry: T, index: number, list: T[]): boolean =>
  list.findIndex(({ id }) => id === entry.id) === index;
function onPiece(d: ClassroomDocument, index: number, does: (arrangement: string, piece: string) => unknown): unknown {
  if (here(d) === 'empty') return false;
  const piece = pick(d.read().arrangements[0]?.pieces ?? [], index);
  return piece && does(here(d), piece.id);
}

type Step = { who: number; act: Act | null; to: number; pick: number; twice: boolean };
const step: fc.Arbitrary<Step> = fc.record({
  who: fc.nat(2),
  act: fc.option(act, { freq: 3 }),
  to: fc.nat(2),
  pick: fc.nat(5),
  twice: fc.boolean(),
});

describe('people who edit apart and meet', () => {
  for (const count of [2, 3])
    it(`${count} of them see the same classroom, one that a file may hold`, () => {
      fc.assert(
        fc.property(fc.array(step, { minLength: 5, maxLength: 40 }), (steps) => {
          const network = scriptedNetwork(furnished(), count);
          for (const { who, act: does, to, pick: which, twice } of steps) {
            const person = network.people[who % count];
            if (does && person && !(here(person) === 'empty')) does(person);
            else if (who % count !== to % count) network.deliver(who % count, to % count, which, twice);
          }
          network.settle();
          const [first, ...others] = network.people;
          if (!first) throw new Error('nobody there');
          for (const other of others) {
            expect(other.read()).toEqual(first.read());
            expect(other.needsRepair()).toEqual(first.needsRepair());
          }
          for (const classroom of [first.read(), exportClassroom(first)]) {
            const file = readClassroom(JSON.parse(JSON.stringify(classroom)));
            expect(file.ok ? [] : file.problems).toEqual([]);
          }
          for (const person of network.people) person.destroy();
        }),
        { numRuns: 60 },
      );
    });

  it('what is read step by step is what a fresh reading gives', () => {
    fc.assert(
      fc.property(fc.array(act, { minLength: 1, maxLength: 25 }), (acts) => {
        const [person] = scriptedNetwork(furnished(), 1).people;
        if (!person) throw new Error('nobody there');
        for (const does of acts) {
          does(person);
          const seen = person.read();
          expect(person.read()).toBe(seen);
        }
        const fresh = openDocument(person.doc);
        expect(person.read()).toEqual(fresh.read());
        expect(person.needsRepair()).toEqual(fresh.needsRepair());
      }),
      { numRuns: 40 },
    );
  });
});

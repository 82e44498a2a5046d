import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { maximumAntichain } from '#model/measures/order/antichain.ts';
import { crowded } from '#model/rules/order/crowded.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { mostChosen } from '#tests/support/mostChosen.ts';
import { patience, runs } from '#tests/support/runs.ts';
import { shelvedInOrder, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];
const SEED = 20270401;

const orderOf = (classroom: Classroom) => measuresOf(buildScene(classroom)).order();
const movesOf = (classroom: Classroom): number =>
  orderOf(classroom)
    .strands()
    .reduce((sum, line) => sum + line.moves.length, 0);

const faultsOf = (classroom: Classroom) => {
  const scene = buildScene(classroom);
  return judgeRule(crowded, scene, measuresOf(scene)).findings.filter(({ severity }) => severity === 'should');
};

/** Materials without circles: steps and prerequisites both follow the index. Some are not placed. */
function classOf(max: number) {
  return fc
    .array(
      fc.record({
        strand: fc.constantFrom('a', 'b', ''),
        hasStep: fc.boolean(),
        rise: fc.integer({ min: 0, max: 1 }),
        after: fc.array(fc.nat(), { maxLength: 2 }),
        isPlaced: fc.boolean(),
        sure: fc.constantFrom('published' as const, 'common practice' as const, 'own' as const),
      }),
      { minLength: 2, maxLength: max },
    )
    .chain((rows) => {
      let step = 0;
      const materials = rows.map(({ strand, hasStep, rise, after, sure }, i): MaterialInput => {
        step += rise;
        const ids = i === 0 ? [] : [...new Set(after.map((n) => `m${n % i}`))];
        return tray(`m${i}`, {
          strand,
          step: hasStep ? step : null,
          after: ids,
          afterSure: Object.fromEntries(ids.map((id) => [id, sure])),
        });
      });
      const ids = materials.map((m) => m.id).filter((_, i) => rows[i]?.isPlaced || rows.length <= 8);
      return fc.shuffledSubarray(ids, { minLength: Math.min(ids.length, 2), maxLength: ids.length }).map((order) => ({ materials, order }));
    });
}

/** Which index has to come before which: the plain definition, closed by Warshall's triple loop over all materials. */
function required(materials: readonly MaterialInput[]): boolean[][] {
  const n = materials.length;
  const before = materials.map((u) =>
    materials.map(
      (v) =>
        (v.after ?? []).includes(u.id) ||
        (u.strand !== '' && u.strand === v.strand && typeof u.step === 'number' && typeof v.step === 'number' && u.step < v.step),
    ),
  );
  for (let k = 0; k < n; k++)
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) if (before[i]?.[k] && before[k]?.[j]) (before[i] as boolean[])[j] = true;
  return before;
}

const indexOf = (id: string): number => Number(id.slice(1));

/** Fewest moves by trying every right order: what is not in the longest common run with the present one has to move. */
function fewestByTrying(order: readonly string[], before: readonly (readonly boolean[])[]): number {
  const n = order.length;
  const comes = order.map((u) => order.map((v) => before[indexOf(u)]?.[indexOf(v)] ?? false));
  let best = 0;
  const used = new Array<boolean>(n).fill(false);
  // longest[i]: longest run so far that ends in position i
  const extend = (depth: number, longest: readonly number[]): void => {
    if (depth === n) {
      best = Math.max(best, ...longest);
      return;
    }
    for (let i = 0; i < n; i++) {
      if (used[i] || comes.some((row, u) => !used[u] && row[i])) continue;
      used[i] = true;
      extend(
        depth + 1,
        longest.map((run, at) => (at === i ? 1 + Math.max(0, ...longest.slice(0, i)) : run)),
      );
      used[i] = false;
    }
  };
  extend(0, new Array<number>(n).fill(0));
  return n - best;
}

describe('fewest materials to move', () => {
  it('agrees with every right order tried, up to eight trays', { timeout: patience }, () => {
    fc.assert(
      fc.property(classOf(8), ({ materials, order }) => {
        expect(movesOf(shelvedInOrder(materials, order))).toBe(fewestByTrying(order, required(materials)));
      }),
      { seed: SEED, numRuns: runs(600, 3000) },
    );
  });

  it('agrees with a chain cover found another way, up to sixty trays', { timeout: patience }, () => {
    fc.assert(
      fc.property(classOf(60), ({ materials, order }) => {
        const before = required(materials);
        const inverted = order.map((v, p) => order.map((u, q) => q > p && (before[indexOf(u)]?.[indexOf(v)] ?? false)));
        expect(movesOf(shelvedInOrder(materials, order))).toBe(largestMatching(inverted));
      }),
      { seed: SEED, numRuns: runs(150, 600) },
    );
  });

  it('agrees with HiGHS, a general-purpose solver, asked for the most trays of which no two are out of order', {
    timeout: patience,
  }, () => {
    fc.assert(
      fc.property(classOf(40), ({ materials, order }) => {
        const before = required(materials);
        // Of two trays the one that is read first has to come later: one of them moves.
        const pairs = order.flatMap((v, p) => order.flatMap((u, q) => (q > p && before[indexOf(u)]?.[indexOf(v)] ? [[p, q]] : [])));
        const { members, isOptimal } = mostChosen(order.length, pairs);
        expect(isOptimal).toBe(true);
        expect(movesOf(shelvedInOrder(materials, order))).toBe(order.length - members.length);
      }),
      { seed: SEED, numRuns: runs(40, 250) },
    );
  });

  it('is all but the longest non-decreasing run when one strand has ties', { timeout: patience }, () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 120 }), (steps) => {
        const materials = steps.map((step, i) => tray(`m${i}`, { step }));
        const ends: number[] = [];
        for (const step of steps) {
          const at = ends.findIndex((end) => end > step);
          ends[at === -1 ? ends.length : at] = step;
        }
        const order = materials.map((m) => m.id);
        expect(movesOf(shelvedInOrder(materials, order))).toBe(steps.length - ends.length);
      }),
      { seed: SEED, numRuns: runs(200, 1000) },
    );
  });

  it('keeps a set in which nothing is comparable, as large as there is', { timeout: patience }, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 14 }), fc.array(fc.boolean(), { minLength: 91, maxLength: 91 }), (count, bits) => {
        const above = closed(count, bits);
        const words = 1;
        const rows = Uint32Array.from(above, (row) => row.reduce((word, bit, q) => (bit ? word | (1 << q) : word), 0));
        const stays = maximumAntichain({ count, words, rows });
        const kept = [...stays.keys()].filter((i) => stays[i] === 1);
        for (const p of kept) for (const q of kept) expect(above[p]?.[q]).toBe(false);
        expect(kept.length).toBe(largestByTrying(count, above));
      }),
      { seed: SEED, numRuns: runs(300, 1500) },
    );
  });
});

describe('the fix of a strand', () => {
  it('moves just those, keeps the rest on its board in its order, and mends the strand', { timeout: patience }, () => {
    fc.assert(
      fc.property(
        classOf(14),
        fc.constantFrom('rows' as const, 'columns' as const),
        fc.boolean(),
        ({ materials, order }, reading, isRtl) => {
          const made = shelvedInOrder(materials, order, { display: { readingDirection: isRtl ? 'rtl' : 'ltr' } });
          const classroom = {
            ...made,
            arrangements: made.arrangements.map((a) => ({ ...a, pieces: a.pieces.map((piece) => ({ ...piece, reading })) })),
          };
          const measure = orderOf(classroom);
          const at = (position: number) => measure.relation.reading[position]?.material.id ?? '';
          for (const trouble of measure.troubles) {
            const { placements, shortages, moves } = measure.mend(trouble);
            // Columns can leave no place that keeps all the others; then it says so and offers no fix.
            if (reading === 'columns' && shortages.length > 0) continue;
            expect(shortages).toEqual([]);
            const edits = placements.map((placement) => ({ do: 'place' as const, placement }));
            const after = applyEdits(classroom, 'a1', edits);
            const mended = orderOf(after);
            expect(faultsOf(after), 'a fix crowds no board').toEqual([]);
            expect(mended.troubles.map(({ strand }) => strand)).not.toContain(trouble.strand);
            const moving = new Set(moves.map(at));
            const rest = ({ relation }: typeof measure) => {
              const kept = relation.reading.filter((t) => !moving.has(t.material.id)).map((t) => `${t.placement.level}: ${t.material.id}`);
              return reading === 'rows' ? kept : kept.sort();
            };
            expect(rest(mended)).toEqual(rest(measure));
          }
        },
      ),
      { seed: SEED, numRuns: runs(400, 1500) },
    );
  });
});

/** Largest matching by single augmenting ways, on a plain matrix. */
function largestMatching(rows: readonly (readonly boolean[])[]): number {
  const owner = new Map<number, number>();
  const tryLeft = (left: number, seen: Set<number>): boolean => {
    for (let right = 0; right < rows.length; right++) {
      if (!rows[left]?.[right] || seen.has(right)) continue;
      seen.add(right);
      const its = owner.get(right);
      if (its !== undefined && !tryLeft(its, seen)) continue;
      owner.set(right, left);
      return true;
    }
    return false;
  };
  return rows.filter((_, left) => tryLeft(left, new Set())).length;
}

/** A strict order on 0..count-1 (only upwards), closed. */
function closed(count: number, bits: readonly boolean[]): boolean[][] {
  let next = 0;
  const above = Array.from({ length: count }, (_, p) =>
    Array.from({ length: count }, (_, q) => q > p && (bits[next++ % bits.length] ?? false)),
  );
  for (let k = 0; k < count; k++)
    for (let p = 0; p < count; p++) for (let q = 0; q < count; q++) if (above[p]?.[k] && above[k]?.[q]) (above[p] as boolean[])[q] = true;
  return above;
}

function largestByTrying(count: number, above: readonly (readonly boolean[])[]): number {
  const clash = above.map((row, p) => row.reduce((word, bit, q) => (bit || above[q]?.[p] ? word | (1 << q) : word), 0));
  let best = 0;
  for (let set = 0; set < 1 << count; set++) {
    let size = 0;
    let isFree = true;
    for (let p = 0; p < count && isFree; p++) {
      if (((set >> p) & 1) === 0) continue;
      size++;
      isFree = ((clash[p] ?? 0) & set) === 0;
    }
    if (isFree) best = Math.max(best, size);
  }
  return best;
}

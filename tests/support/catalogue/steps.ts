import type { MaterialsSource } from './source.ts';

export interface GeneratedStep {
  /** 1, 2, … within the strand; ties where nothing says which comes first */
  readonly step: number;
  readonly sure: 'published' | 'common practice';
}

type Edge = readonly [before: string, after: string];

/**
 * The step of every material within its strand: how many materials of the strand, one after the other, have
 * to come before it, by the published order (1914 steps, 1912 grades, stated constraints) and the prerequisites.
 * A step is sure as published only if the handbooks alone put the material before or after every other published step.
 * @throws Error when the sources contradict one another.
 */
export function generateSteps(source: MaterialsSource): ReadonlyMap<string, GeneratedStep> {
  const published = closure(publishedEdges(source));
  const all = closure([...publishedEdges(source), ...practiceEdges(source)]);
  const steps = new Map<string, GeneratedStep>();
  for (const strand of strandsOf(source)) {
    const level = new Map<string, number>();
    const levelOf = (id: string): number => {
      const known = level.get(id);
      if (known !== undefined) return known;
      const before = strand.filter((other) => all.get(other)?.has(id));
      const mine = before.length === 0 ? 1 : 1 + Math.max(...before.map(levelOf));
      level.set(id, mine);
      return mine;
    };
    const isRelated = (p: string, q: string) => published.get(p)?.has(q) || published.get(q)?.has(p);
    const byLevel = strand.filter((id) => strand.some((other) => isRelated(id, other))).sort((p, q) => levelOf(p) - levelOf(q));
    const sure: string[] = [];
    for (const id of byLevel) if (sure.every((other) => levelOf(other) === levelOf(id) || published.get(other)?.has(id))) sure.push(id);
    const isTold = new Set(sure.map(levelOf)).size > 1;
    for (const id of strand) steps.set(id, { step: levelOf(id), sure: isTold && sure.includes(id) ? 'published' : 'common practice' });
  }
  return steps;
}

/**
 * Stated pairs (before, after, how sure) that neither the steps nor the prerequisites say already.
 * They order two trays without making one a prerequisite of the other.
 */
export function furtherPairs(source: MaterialsSource): readonly (readonly [string, string, 'published' | 'common practice'])[] {
  const required = closure(source.materials.flatMap((m) => m.prerequisites.map((p): Edge => [p, m.id])));
  const strandOf = new Map(source.materials.map((m) => [m.id, `${m.area}/${m.strand}`]));
  return source.orderConstraints
    .filter((c) => strandOf.get(c.before) !== strandOf.get(c.after) && !required.get(c.before)?.has(c.after))
    .map((c) => [c.before, c.after, c.strength]);
}

/** What the handbooks say of two materials of one strand, and the prerequisites they state. */
function publishedEdges(source: MaterialsSource): Edge[] {
  const strandOf = new Map(source.materials.map((m) => [m.id, `${m.area}/${m.strand}`]));
  const inStrand = ([before, after]: Edge) => strandOf.get(before) === strandOf.get(after);
  const grade = new Map<string, number>();
  for (const { grade: n, items } of source.publishedOrder)
    for (const { materialIds } of items) for (const id of materialIds) if (!grade.has(id)) grade.set(id, n);
  const byGrade = [...grade].flatMap(([a, n]) => [...grade].filter(([, m]) => n < m).map(([b]): Edge => [a, b]));
  const steps = source.publishedOrder1914.steps;
  const by1914 = steps.flatMap((p) =>
    steps
      .filter((q) => p.n < q.n && !q.parallelWith?.includes(p.n))
      .flatMap((q) => p.materialIds.flatMap((a) => q.materialIds.map((b): Edge => [a, b]))),
  );
  const stated = source.orderConstraints.filter((c) => c.strength === 'published').map((c): Edge => [c.before, c.after]);
  const required = source.materials.flatMap((m) =>
    m.prerequisites.filter((p) => m.prerequisite_confidence[p] !== 'common practice').map((p): Edge => [p, m.id]),
  );
  return [...byGrade.filter(inStrand), ...by1914.filter(inStrand), ...stated, ...required];
}

function practiceEdges(source: MaterialsSource): Edge[] {
  const stated = source.orderConstraints.map((c): Edge => [c.before, c.after]);
  return [...stated, ...source.materials.flatMap((m) => m.prerequisites.map((p): Edge => [p, m.id]))];
}

function strandsOf(source: MaterialsSource): string[][] {
  const strands = new Map<string, string[]>();
  for (const m of source.materials) {
    const key = `${m.area}/${m.strand}`;
    strands.set(key, [...(strands.get(key) ?? []), m.id]);
  }
  return [...strands.values()];
}

/** For each material all that come after it. */
function closure(edges: readonly Edge[]): Map<string, Set<string>> {
  const next = new Map<string, string[]>();
  for (const [before, after] of edges) next.set(before, [...(next.get(before) ?? []), after]);
  const reached = new Map<string, Set<string>>();
  const walk = (id: string, path: readonly string[]): Set<string> => {
    const known = reached.get(id);
    if (known) return known;
    if (path.includes(id)) throw new Error(`the sources go in a circle: ${[...path, id].join(' -> ')}`);
    const all = new Set<string>();
    for (const after of next.get(id) ?? []) {
      all.add(after);
      for (const further of walk(after, [...path, id])) all.add(further);
    }
    reached.set(id, all);
    return all;
  };
  for (const id of next.keys()) walk(id, []);
  return reached;
}

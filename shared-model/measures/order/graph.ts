import { catalogueById, cataloguePairs } from '../../catalogue/catalogue.ts';
import { sureness } from '../../schema/material.ts';
import type { Material, Sureness } from '../../schema/types.ts';
import { components, type Digraph, makeDigraph } from './digraph.ts';

/** How sure an edge is: 3 published, 2 the class's own word, 1 common practice. From 2 on it is a "should". */
export type Grade = 1 | 2 | 3;
const grades: Readonly<Record<Sureness, Grade>> = { published: 3, own: 2, 'common practice': 1 };
const OWN = 2;

/** What has to come before what, without circles. Nodes: the class's materials in file order, then helpers. */
export interface OrderGraph {
  readonly edges: Digraph;
  /** Nodes so that every edge goes forward. */
  readonly topological: Int32Array;
  /** Ids of materials that the class itself has put in a circle, in the order of the circle. */
  readonly circles: readonly (readonly string[])[];
}

const kept = new WeakMap<readonly Material[], OrderGraph>();

/** The graph of a list of materials; kept as long as the list is the same object. */
export function orderGraph(materials: readonly Material[]): OrderGraph {
  const known = kept.get(materials);
  if (known) return known;
  const made = build(materials);
  kept.set(materials, made);
  return made;
}

interface Said {
  readonly from: number;
  readonly to: number;
  readonly grade: Grade;
}

/**
 * A circle loses what comes from the catalogue first (prerequisites and steps between its members). If the class's own
 * words still go round, they are named as a circle and judged without the prerequisites that close it.
 */
function build(materials: readonly Material[]): OrderGraph {
  const { said, names } = saidEdges(materials);
  const whole = withSteps(materials, said, names.length, null);
  const first = components(whole);
  if (!first.hasCircle) return { edges: whole, topological: first.topological, circles: [] };
  const inCircle = first.circleOf;
  const isInside = (edge: Said) => inCircle[edge.from] !== -1 && inCircle[edge.from] === inCircle[edge.to];
  const ownSaid = said.filter((edge) => edge.grade === OWN || !isInside(edge));
  const own = withSteps(materials, ownSaid, names.length, inCircle);
  const second = components(own);
  if (!second.hasCircle) return { edges: own, topological: second.topological, circles: [] };
  const stuck = second.circleOf;
  const open = ownSaid.filter((edge) => stuck[edge.from] === -1 || stuck[edge.from] !== stuck[edge.to]);
  const edges = withSteps(materials, open, names.length, inCircle);
  const circles = second.circles.map((nodes) => nodes.flatMap((node) => names[node] ?? []));
  return { edges, topological: components(edges).topological, circles };
}

/** Prerequisites and stated pairs. Absent materials of the catalogue join as nodes, so that their prerequisites count on. */
function saidEdges(materials: readonly Material[]): { said: Said[]; names: string[] } {
  const names = materials.map((m) => m.id);
  const byId = new Map<string, number[]>(names.map((id, node) => [id, [node]]));
  const byCatalogue = new Map<string, number[]>();
  materials.forEach(({ catalogue }, node) => {
    if (catalogue === null) return;
    const copies = byCatalogue.get(catalogue);
    if (copies) copies.push(node);
    else byCatalogue.set(catalogue, [node]);
  });
  const said: Said[] = [];
  const absent: number[] = [];
  const nodesOf = (id: string): readonly number[] => {
    const here = byId.get(id) ?? byCatalogue.get(id);
    if (here) return here;
    if (!catalogueById.has(id)) return [];
    const node = names.push(id) - 1;
    byCatalogue.set(id, [node]);
    absent.push(node);
    return [node];
  };
  const join = (material: Material, to: number) => {
    for (const id of material.after)
      for (const from of nodesOf(id)) said.push({ from, to, grade: grades[material.afterSure[id] ?? 'own'] });
  };
  materials.forEach(join);
  for (let node = absent.pop(); node !== undefined; node = absent.pop()) {
    const entry = catalogueById.get(names[node] ?? '');
    if (entry) join(entry, node);
  }
  for (const [before, after, sure] of cataloguePairs)
    for (const from of byCatalogue.get(before) ?? [])
      for (const to of byCatalogue.get(after) ?? []) said.push({ from, to, grade: grades[sure] });
  return { said, names };
}

/** A step the class typed or changed is its own; one still as in the catalogue is as sure as there. */
function stepGrade(material: Material): Grade {
  const entry = material.catalogue === null ? undefined : catalogueById.get(material.catalogue);
  if (entry && (entry.step !== material.step || entry.strand !== material.strand)) return OWN;
  const sure = sureness.safeParse(material.sure.step);
  return sure.success ? grades[sure.data] : OWN;
}

interface Stepped {
  readonly node: number;
  readonly step: number;
  readonly grade: Grade;
}

/** Adds the steps: in a strand every smaller step comes before every larger one. */
function withSteps(materials: readonly Material[], said: readonly Said[], nodeCount: number, circleOf: Int32Array | null): Digraph {
  const edges = makeDigraph(nodeCount);
  for (const edge of said) edges.add(edge.from, edge.to, edge.grade);
  const strands = new Map<string, Stepped[]>();
  materials.forEach((material, node) => {
    const strand = material.strand.trim();
    if (strand === '' || material.step === null || material.step === undefined) return;
    const entry = { node, step: material.step, grade: stepGrade(material) };
    const list = strands.get(strand);
    if (list) list.push(entry);
    else strands.set(strand, [entry]);
  });
  for (const list of strands.values()) addStrand(edges, list, circleOf);
  edges.close();
  return edges;
}

const any = (): boolean => true;
const isOwn = (entry: Stepped): boolean => entry.grade === OWN;
const isPublished = (entry: Stepped): boolean => entry.grade === 3;

/** More circles than this in one strand are treated as one, so that a hostile file cannot stall a tablet. */
const CIRCLES_APART = 8;

function addStrand(edges: Digraph, list: Stepped[], circleOf: Int32Array | null): void {
  list.sort((p, q) => p.step - q.step);
  const found = new Set(list.map(({ node }) => circleOf?.[node] ?? -1).filter((circle) => circle !== -1));
  const circle = ({ node }: Stepped): number => {
    const mine = circleOf?.[node] ?? -1;
    return mine !== -1 && found.size > CIRCLES_APART ? 0 : mine;
  };
  // A pair is the class's own as soon as the class set one of the two steps.
  addChain(edges, list, isOwn, any, OWN);
  if (list.every(isOwn)) return;
  addChain(edges, list, any, isOwn, OWN);
  for (const inside of new Set(list.map(circle))) {
    // What the catalogue says of two members of a circle is dropped; of a member and the rest it is not.
    const starts = (entry: Stepped) => circle(entry) === inside;
    const ends = (entry: Stepped) => inside === -1 || circle(entry) !== inside;
    addChain(
      edges,
      list,
      (e) => starts(e) && isPublished(e),
      (e) => ends(e) && isPublished(e),
      3,
    );
    addChain(
      edges,
      list,
      (e) => starts(e) && !isOwn(e),
      (e) => ends(e) && !isOwn(e),
      1,
    );
  }
}

/** Every entry that starts goes before every entry of a larger step that ends, by one helper node a step. */
function addChain(
  edges: Digraph,
  list: readonly Stepped[],
  starts: (entry: Stepped) => boolean,
  ends: (entry: Stepped) => boolean,
  grade: Grade,
): void {
  if (!list.some(starts) || !list.some(ends)) return;
  let helper = -1;
  for (let i = 0; i < list.length; ) {
    const step = list[i]?.step;
    let j = i;
    while (j < list.length && list[j]?.step === step) j++;
    const level = list.slice(i, j);
    if (helper !== -1) for (const entry of level) if (ends(entry)) edges.add(helper, entry.node, grade);
    const starting = level.filter(starts);
    if (starting.length > 0) {
      const next = edges.addNode();
      if (helper !== -1) edges.add(helper, next, grade);
      for (const entry of starting) edges.add(entry.node, next, grade);
      helper = next;
    }
    i = j;
  }
}

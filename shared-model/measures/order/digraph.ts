/** A directed graph in flat arrays: small, and walked in order. */
export interface Digraph {
  readonly nodeCount: number;
  addNode(): number;
  add(from: number, to: number, grade: number): void;
  /** Sorts the edges; none may be added after it. */
  close(): void;
  /** Edges that leave a node: `to[i]` for i from `outStart[node]` to `outStart[node + 1]`. */
  readonly outStart: Int32Array;
  readonly to: Int32Array;
  /** Edges that come into a node: `from[i]` with `inGrade[i]` for i from `inStart[node]`. */
  readonly inStart: Int32Array;
  readonly from: Int32Array;
  readonly inGrade: Uint8Array;
}

export function makeDigraph(nodes: number): Digraph {
  let nodeCount = nodes;
  const froms: number[] = [];
  const tos: number[] = [];
  const grades: number[] = [];
  let out = group(0, [], []);
  let into = group(0, [], []);
  let inGrade = new Uint8Array(0);
  return {
    get nodeCount() {
      return nodeCount;
    },
    get outStart() {
      return out.start;
    },
    get to() {
      return out.value;
    },
    get inStart() {
      return into.start;
    },
    get from() {
      return into.value;
    },
    get inGrade() {
      return inGrade;
    },
    addNode: () => nodeCount++,
    add(from, to, grade) {
      froms.push(from);
      tos.push(to);
      grades.push(grade);
    },
    close() {
      out = group(nodeCount, froms, tos);
      into = group(nodeCount, tos, froms);
      inGrade = Uint8Array.from(group(nodeCount, tos, grades).value);
    },
  };
}

/** Values grouped by key, in the order given. */
function group(keyCount: number, keys: readonly number[], values: readonly number[]): { start: Int32Array; value: Int32Array } {
  const start = new Int32Array(keyCount + 1);
  for (const key of keys) start[key + 1] = (start[key + 1] ?? 0) + 1;
  for (let key = 0; key < keyCount; key++) start[key + 1] = (start[key + 1] ?? 0) + (start[key] ?? 0);
  const next = start.slice();
  const value = new Int32Array(keys.length);
  keys.forEach((key, i) => {
    const at = next[key] ?? 0;
    value[at] = values[i] ?? 0;
    next[key] = at + 1;
  });
  return { start, value };
}

export interface Components {
  readonly hasCircle: boolean;
  /** For each node the circle it is on; -1: none. */
  readonly circleOf: Int32Array;
  /** One way round each circle. */
  readonly circles: readonly (readonly number[])[];
  /** Nodes so that every edge outside a circle goes forward. */
  readonly topological: Int32Array;
}

/** Strongly connected components, by Tarjan's walk without recursion. */
export function components(graph: Digraph): Components {
  const n = graph.nodeCount;
  const index = new Int32Array(n).fill(-1);
  const low = new Int32Array(n);
  const circleOf = new Int32Array(n).fill(-1);
  const isOpen = new Uint8Array(n);
  const next = graph.outStart.slice();
  const path: number[] = [];
  const open: number[] = [];
  const topological = new Int32Array(n);
  const groups: number[][] = [];
  let found = 0;
  let free = n;
  for (let root = 0; root < n; root++) {
    if (index[root] !== -1) continue;
    path.push(root);
    while (path.length > 0) {
      const node = path[path.length - 1] as number;
      if (index[node] === -1) {
        index[node] = found;
        low[node] = found++;
        isOpen[node] = 1;
        open.push(node);
      }
      const at = next[node] as number;
      if (at < (graph.outStart[node + 1] as number)) {
        next[node] = at + 1;
        const to = graph.to[at] as number;
        if (index[to] === -1) path.push(to);
        else if (isOpen[to]) low[node] = Math.min(low[node] as number, index[to] as number);
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) low[parent] = Math.min(low[parent] as number, low[node] as number);
      if (low[node] !== index[node]) continue;
      const members: number[] = [];
      let member: number;
      do {
        member = open.pop() as number;
        isOpen[member] = 0;
        members.push(member);
        topological[--free] = member;
      } while (member !== node);
      if (members.length > 1 || hasLoop(graph, node)) {
        for (const m of members) circleOf[m] = groups.length;
        groups.push(members);
      }
    }
  }
  const circles = groups.map((members) => wayRound(graph, members, circleOf));
  return { hasCircle: groups.length > 0, circleOf, circles, topological };
}

function hasLoop(graph: Digraph, node: number): boolean {
  for (let i = graph.outStart[node] as number; i < (graph.outStart[node + 1] as number); i++) if (graph.to[i] === node) return true;
  return false;
}

/** A shortest way from the lowest node of a circle back to itself. */
function wayRound(graph: Digraph, members: readonly number[], circleOf: Int32Array): number[] {
  const start = members.reduce((p, q) => Math.min(p, q));
  const cameFrom = new Map<number, number>();
  let frontier = [start];
  while (frontier.length > 0) {
    const further: number[] = [];
    for (const node of frontier) {
      for (let i = graph.outStart[node] as number; i < (graph.outStart[node + 1] as number); i++) {
        const to = graph.to[i] as number;
        if (circleOf[to] !== circleOf[start]) continue;
        if (to === start) return trace(cameFrom, node, start);
        if (cameFrom.has(to)) continue;
        cameFrom.set(to, node);
        further.push(to);
      }
    }
    frontier = further;
  }
  return [start];
}

function trace(cameFrom: ReadonlyMap<number, number>, end: number, start: number): number[] {
  const way = [end];
  for (let node = end; node !== start; ) {
    node = cameFrom.get(node) ?? start;
    way.push(node);
  }
  return way.reverse();
}

import { LOOKING, mayChange } from '#client/session/lookOnly.ts';
import type { Session } from '#client/session/types.ts';
import { fixtureKindName, openingKindName, pieceKindName } from './describe.ts';
import { sizeFor } from './newThings.ts';
import { type PlanState, planStoreOf, type Tool } from './planStore.ts';

export interface Verb {
  readonly tool: Tool;
  readonly name: string;
  /** The key that takes it up, printed after its name. */
  readonly letter?: string;
}

/** In the order of the line above the plan. */
export const verbs: readonly Verb[] = [
  { tool: { kind: 'wall' }, name: 'Wall', letter: 'W' },
  { tool: { kind: 'opening', of: 'door' }, name: 'Door', letter: 'D' },
  { tool: { kind: 'opening', of: 'window' }, name: 'Window', letter: 'N' },
  { tool: { kind: 'piece', of: 'shelf' }, name: 'Shelf', letter: 'S' },
  { tool: { kind: 'piece', of: 'table' }, name: 'Table', letter: 'T' },
  { tool: { kind: 'fixture', of: 'sink' }, name: 'Sink', letter: 'K' },
];

export const asides: readonly Verb[] = [
  { tool: { kind: 'several' }, name: 'Several', letter: 'V' },
  { tool: { kind: 'tape' }, name: 'Tape', letter: 'R' },
  { tool: { kind: 'remark' }, name: 'Remark', letter: 'E' },
];

/** Drawn less often: in words behind "More". */
export const moreVerbs: readonly Verb[] = [
  ...(['seat', 'mat-stand', 'easel', 'rug', 'adult-seat', 'other'] as const).map(
    (of): Verb => ({ tool: { kind: 'piece', of }, name: pieceKindName(of) }),
  ),
  { tool: { kind: 'opening', of: 'passage' }, name: 'Passage' },
  ...(['column', 'partition', 'radiator', 'hearth', 'built-in', 'step', 'other'] as const).map(
    (of): Verb => ({ tool: { kind: 'fixture', of }, name: fixtureKindName(of) }),
  ),
];

/** Tools that change nothing but the remarks: they are there for who may only look, too. */
export const isForLookers = (kind: Tool['kind']): boolean => kind === 'tape' || kind === 'remark';

export const isSameTool = (p: Tool | null, q: Tool | null): boolean =>
  p?.kind === q?.kind && (p && 'of' in p ? p.of : null) === (q && 'of' in q ? q.of : null);

export function toolOfKey(key: string): Tool | null {
  const letter = key.toUpperCase();
  return [...verbs, ...asides].find((verb) => verb.letter === letter)?.tool ?? null;
}

export function toolName(tool: Tool): string {
  if (tool.kind === 'piece') return pieceKindName(tool.of);
  if (tool.kind === 'fixture') return fixtureKindName(tool.of);
  if (tool.kind === 'opening') return openingKindName(tool.of);
  return { wall: 'Wall', tape: 'Tape', several: 'Several', remark: 'Remark', picture: 'Picture' }[tool.kind];
}

const sayings: Readonly<Record<'wall' | 'tape' | 'several' | 'remark' | 'picture' | 'thing' | 'opening', string>> = {
  wall: 'Press the corners one after the other, or type lengths.',
  tape: 'Press two points, or two things, to measure between them.',
  several: 'Draw an area round them, or press each.',
  remark: 'Press where the remark belongs.',
  picture: 'Of an existing plan, under the drawing. One finger slides it.',
  thing: 'Press where it stands.',
  opening: 'Press on a wall.',
};

/** Nothing begun with any tool. */
export const noDraft = {
  tool: null,
  corners: [],
  tape: [],
  tapeOn: [],
  tapeEdge: null,
  tapeWay: null,
  cursor: null,
  cross: null,
  picturePoints: [],
  remarkAt: null,
} satisfies Partial<PlanState>;

/** Takes a tool in hand; the same again puts it down. */
export function takeUpTool(session: Session, tool: Tool): void {
  if (!mayChange(session) && !isForLookers(tool.kind)) {
    session.announce(LOOKING);
    return;
  }
  const store = planStoreOf(session);
  const isPutDown = isSameTool(store.state().tool, tool);
  store.set({ ...noDraft, tool: isPutDown ? null : tool, size: sizeFor(tool) });
  if (isPutDown) return;
  if (tool.kind !== 'tape' && tool.kind !== 'remark' && tool.kind !== 'several') session.setView({ chosen: null });
  session.announce(`${toolName(tool)}. ${sayTool(tool)}${byKey(tool)}`, true);
}

/** Enter does without pointing, for things that can be moved afterwards. */
function byKey(tool: Tool): string {
  if (tool.kind === 'piece' || tool.kind === 'fixture') return ' Enter sets it down in the middle of the room.';
  if (tool.kind === 'several') return ' Tab goes from thing to thing, Enter chooses or leaves out, Escape is done.';
  if (tool.kind === 'tape') return ' Tab goes from thing to thing, Enter lays an end of the tape there; arrows go to any other place.';
  if (tool.kind === 'remark') return ' Arrows move a cross, Tab goes from thing to thing, Enter puts it there.';
  return tool.kind === 'opening' ? ' Enter sets it on the nearest wall.' : '';
}

export function sayTool(tool: Tool): string {
  if (tool.kind === 'opening') return sayings.opening;
  return sayings[tool.kind === 'piece' || tool.kind === 'fixture' ? 'thing' : tool.kind];
}

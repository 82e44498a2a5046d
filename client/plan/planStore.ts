import type { Session } from '#client/session/types.ts';
import type { Edit } from '#model/findings/edit.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { Fixture, Opening, Piece } from '#model/schema/types.ts';
import type { Item } from './items.ts';

/** What a press on the drawing makes. */
export type Tool =
  | { readonly kind: 'wall' }
  | { readonly kind: 'opening'; readonly of: Opening['kind'] }
  | { readonly kind: 'piece'; readonly of: Piece['kind'] }
  | { readonly kind: 'fixture'; readonly of: Fixture['kind'] }
  | { readonly kind: 'tape' }
  /** Several things chosen at once, by an area or one after the other. */
  | { readonly kind: 'several' }
  /** The picture under the drawing: slid, or its scale set. */
  | { readonly kind: 'picture'; readonly step: 'look' | 'scale' }
  | { readonly kind: 'remark' };

/** A thing, door, window or wall that an end of the tape lies on. */
export type TapeThing = Item;

export interface TapeWay {
  readonly said: string;
  /** mm; null: there is no way, or it cannot be told */
  readonly width: number | null;
  /** The points of both obstacles at its narrowest place, mm. */
  readonly between: readonly Point[];
}

export interface NewSize {
  /** mm */
  readonly width: number;
  readonly depth: number;
  readonly height: number | null;
}

export interface PlanState {
  readonly tool: Tool | null;
  /** The next new thing's size, typed beside the verbs. */
  readonly size: NewSize;
  /** Corners of the walls drawn so far, mm. */
  readonly corners: readonly Point[];
  /** The two ends of the tape, or the one laid so far. */
  readonly tape: readonly Point[];
  /** What each end of the tape lies on; null: on the floor. */
  readonly tapeOn: readonly (TapeThing | null)[];
  /** The shortest line between two things that the tape lies on, mm; null: it lies on no two. */
  readonly tapeEdge: { readonly from: Point; readonly to: Point; readonly mm: number } | null;
  /** The way between the two ends, in words and as a place; null: not looked for yet. */
  readonly tapeWay: TapeWay | null;
  /** Where the keys are while things are chosen one after the other or the tape is laid; null: nowhere yet. */
  readonly cursor: Item | null;
  /** Where the arrow keys point with a tool that is pressed on the drawing, mm; null: nowhere yet. */
  readonly cross: Point | null;
  /** How the thing in hand lies to its neighbours, in words; empty: nothing holds it. */
  readonly rest: string;
  /** Points pressed on the picture to set its scale, mm. */
  readonly picturePoints: readonly Point[];
  /** Where a remark is about to stand. */
  readonly remarkAt: { readonly at: Point; readonly on: string | null } | null;
  /** A fix being looked at, drawn in pencil. */
  readonly pencil: readonly Edit[] | null;
  /** Moves that are proposed until somebody decides, drawn in pencil with their lengths. */
  readonly proposal: readonly Edit[] | null;
  /** Letter keys for the verbs; some people's aids use letters themselves. */
  readonly hasLetterKeys: boolean;
  /** The chosen thing's typed figures are shown, where they do not stand in line. */
  readonly hasFigures: boolean;
  /** The paper was moved or enlarged by hand. */
  readonly isMoved: boolean;
  /** Rises when the whole room is asked for. */
  readonly wholeRoom: number;
  /** Rises when the front of a shelf is asked for: where it is not on the page, the page turns to it. */
  readonly frontAsked: number;
  /** Rises when the drawing is asked for: where it is not on the page, the page turns to it. */
  readonly drawingAsked: number;
  /** Rises when the checks are asked for. */
  readonly checksAsked: number;
  /** Key of the finding whose things are pointed at, as long as it is the one shown; null: none. */
  readonly pointed: string | null;
}

export interface PlanStore {
  state(): PlanState;
  set(change: Partial<PlanState>): void;
  subscribe(listener: () => void): () => void;
}

const KEYS = 'lowshelf.letterKeys';
const stores = new WeakMap<Session, PlanStore>();

/** What the verbs, the plan and the checks tell each other about the drawing at hand. Never shared, never saved with the class. */
export function planStoreOf(session: Session): PlanStore {
  const known = stores.get(session);
  if (known) return known;
  const store = createStore();
  stores.set(session, store);
  return store;
}

function createStore(): PlanStore {
  let state: PlanState = {
    tool: null,
    size: { width: 1200, depth: 320, height: 700 },
    corners: [],
    tape: [],
    tapeOn: [],
    tapeEdge: null,
    tapeWay: null,
    cursor: null,
    cross: null,
    rest: '',
    picturePoints: [],
    remarkAt: null,
    pencil: null,
    proposal: null,
    hasLetterKeys: readKeys(),
    hasFigures: false,
    isMoved: false,
    wholeRoom: 0,
    frontAsked: 0,
    drawingAsked: 0,
    checksAsked: 0,
    pointed: null,
  };
  const listeners = new Set<() => void>();
  return {
    state: () => state,
    set(change) {
      if (change.hasLetterKeys !== undefined) keepKeys(change.hasLetterKeys);
      state = { ...state, ...change };
      for (const listener of listeners) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

// A browser that keeps nothing (private windows) still draws.
function readKeys(): boolean {
  try {
    return globalThis.localStorage?.getItem(KEYS) !== 'off';
  } catch {
    return true;
  }
}

function keepKeys(isOn: boolean): void {
  try {
    globalThis.localStorage?.setItem(KEYS, isOn ? 'on' : 'off');
  } catch {
    // Kept for this visit only.
  }
}

/** Shows edits in pencil on the plan while somebody looks at a fix; null takes them off again. */
export function showPencil(session: Session, edits: readonly Edit[] | null): void {
  const store = planStoreOf(session);
  if (store.state().pencil !== edits) store.set({ pencil: edits });
}

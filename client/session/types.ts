import type { Report } from '#model/analysis/report.ts';
import type { ClassroomDocument, Commands, NeedsRepair, PersonalUndo } from '#model/document/types.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Arrangement, Classroom, Piece, Room, Side } from '#model/schema/types.ts';

export type SheetName = 'room' | 'materials' | 'places' | 'move-day';

/** What is chosen on the drawing; lists and drawing share it. */
export type Chosen =
  | { readonly kind: 'piece' | 'fixture' | 'opening' | 'corner' | 'wall'; readonly id: string }
  | { readonly kind: 'tray'; readonly id: string };

/** A thing being dragged: where it would be, not yet written. The checks follow it. */
export interface Preview {
  readonly piece: string;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
}

/** What else would be different while something is dragged: things that go along, or the room itself. The checks follow it; colleagues do not see it. */
export interface Draft {
  /** Pieces as they would stand. */
  readonly pieces?: readonly Piece[];
  readonly room?: Room;
}

/** How this person looks at the classroom: never shared, never saved. */
export interface View {
  readonly sheet: SheetName;
  readonly arrangement: string;
  readonly chosen: Chosen | null;
  /** Ids of pieces and fixtures chosen beside `chosen`, which is the first of them. */
  readonly alsoChosen: readonly string[];
  /** The shelf whose front is shown: the last chosen one. */
  readonly frontOf: { readonly piece: string; readonly side: Side } | null;
  /** The material shown on the Materials sheet and marked on fronts. */
  readonly material: string | null;
  /** Key of the finding that is shown on the drawing. */
  readonly finding: string | null;
  /** id of the rule set that the one in force is compared with on the Places sheet; null: not chosen. */
  readonly compared: string | null;
  /** id of the arrangement laid dashed under the shown one; null: none. */
  readonly laid: string | null;
  readonly preview: Preview | null;
  readonly draft: Draft | null;
}

/** Where the document is, told truthfully. */
export interface Kept {
  readonly here: 'kept' | 'keeping' | 'failed' | 'not-yet';
  readonly server: 'saved' | 'saving' | 'offline' | 'refused' | 'alone';
  /** Updates made here that the server has not confirmed. */
  readonly waiting: number;
  /** Why, in words, when here is failed or server is refused. */
  readonly trouble: string | null;
}

export interface Person {
  readonly clientId: number;
  readonly name: string;
  readonly initials: string;
  readonly edge: 'solid' | 'dashed' | 'dotted';
  readonly isMe: boolean;
  readonly sheet: SheetName | null;
  /** id of the arrangement they look at, where it is another than the shown one; null: the same, or not known */
  readonly elsewhere: string | null;
  /** What they have chosen or drag, in the arrangement that is shown. */
  readonly holds: string | null;
  /** What they drag, as it would stand. */
  readonly preview: Preview | null;
}

/** One opened classroom in this browser. Made by `openSession`, handed down by `SessionProvider`. */
export interface Session {
  readonly id: string;
  readonly document: ClassroomDocument;
  readonly commands: Commands;
  readonly undo: PersonalUndo;
  /** The latest of each; a new object only when it changed. */
  classroom(): Classroom;
  arrangement(): Arrangement;
  /** The scene of the shown arrangement, with the preview in it. */
  scene(): Scene;
  /** The last report of the worker; null until the first comes. */
  report(): Report | null;
  /** True while the report may still be of how things stood before. */
  isThinking(): boolean;
  view(): View;
  kept(): Kept;
  people(): readonly Person[];
  needsRepair(): readonly NeedsRepair[];
  setView(change: Partial<View>): void;
  /** Who is here, as colleagues see it; empty initials: not said. */
  setPerson(person: { readonly name: string; readonly initials: string }): void;
  /** Says something politely to a screen reader and in the status line. `isOnPage`: what it says stands on the page already, so it is only heard. */
  announce(text: string, isOnPage?: boolean): void;
  /** Called after anything above changed. */
  subscribe(listener: () => void): () => void;
  close(): Promise<void>;
}

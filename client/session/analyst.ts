import type { Report } from '#model/analysis/report.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview, Session } from './types.ts';

/** Judges a classroom away from the drawing. The session asks it after each change; the latest question wins. */
export interface Analyst {
  /** Never blocks. A preview is judged as if it had been made. Live checks answer first, the slower ones once it has been quiet. */
  ask(classroom: Classroom, arrangement: string, preview: Preview | null): void;
  /** Takes over what a proof found of the mats of an arrangement, for as long as nothing changes that they hang on. */
  knowMats(classroom: Classroom, arrangement: string, mats: Mats): void;
  /** The last report; null until the first comes. */
  report(): Report | null;
  /** What went wrong while judging, in words; null: nothing. */
  trouble(): string | null;
  /** True while slower checks are still to come for the latest question. */
  isThinking(): boolean;
  /** Called after any of the above changed. @returns a function that stops it. */
  subscribe(listener: () => void): () => void;
  close(): void;
}

/** What `openSession` is given. */
export interface OpenOptions {
  readonly analyst: Analyst;
  readonly person: { readonly name: string; readonly initials: string };
  /** Where `session.announce` goes. */
  readonly announce: Session['announce'];
  /** A classroom that was just made or read from a file; absent: what is kept under this id, or comes from the server. */
  readonly start?: Classroom;
}

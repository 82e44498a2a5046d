import type { MatProofStep } from '#model/measures/matProof.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';

/** What the page asks of the worker that proves how many mats lie at once: one question, then it is done. */
export interface ProofQuestion {
  readonly classroom: Classroom;
  readonly arrangement: string;
  /** What a proof of the same room that was cut off had found: it is gone on from there. null: nothing */
  readonly known: Mats | null;
}

/** How far the proof is, and at its end what came of it; null: the walls do not hold. */
export type ProofAnswer = { readonly step: MatProofStep } | { readonly mats: Mats | null } | { readonly failure: string };

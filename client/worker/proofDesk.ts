import type { Picker } from '#model/geometry/pickMost.ts';
import { proveMats } from '#model/measures/matProof.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import type { ProofAnswer, ProofQuestion } from './proofMessages.ts';
import { sayError } from './sayError.ts';

/** Proves to the end and tells how it goes; to stop it, its worker is ended. Apart from the worker so that tests can run it. */
export async function proveAtDesk(
  { classroom, arrangement, known }: ProofQuestion,
  loadPick: () => Promise<Picker>,
  tell: (answer: ProofAnswer) => void,
): Promise<void> {
  try {
    const pick = await loadPick();
    const scene = buildScene(classroom, arrangement);
    const work = proveMats(scene, seatStrips(scene), { pick, known });
    let step = work.next();
    for (; !step.done; step = work.next()) tell({ step: step.value });
    tell({ mats: step.value });
  } catch (error) {
    tell({ failure: sayError(error) });
  }
}

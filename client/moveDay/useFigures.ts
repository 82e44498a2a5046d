import { useEffect, useState } from 'react';
import type { MoveFigures } from '#model/analysis/moveDay/figures.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { MoveAnswer, MoveQuestion } from './messages.ts';

export interface FiguresState {
  readonly of: readonly MoveFigures[];
  /** Why some are missing, in words; null: they are being worked out, or all there. */
  readonly trouble: string | null;
}

const nothing: FiguresState = { of: [], trouble: null };

/**
 * Figures of the two arrangements, reckoned in a worker of their own, so that no check waits for them.
 * @param classroom the same object as long as nothing changed that they hang on
 * @param isReady the checks have answered: two cores do not carry both at once
 */
export function useFigures(classroom: Classroom, from: string, to: string, isReady: boolean): FiguresState {
  const [state, setState] = useState<FiguresState>(nothing);
  const [begun, setBegun] = useState<Classroom | null>(null);
  useEffect(() => {
    if (isReady) setBegun(classroom);
  }, [isReady, classroom]);
  const isBegun = begun === classroom;
  useEffect(() => {
    setState(nothing);
    if (!isBegun) return;
    let worker: Worker;
    try {
      worker = new Worker(new URL('../worker/worker.ts', import.meta.url), { type: 'module', name: 'move day' });
    } catch {
      setState({ of: [], trouble: 'This browser cannot work the figures out. The order of the day stands.' });
      return;
    }
    worker.onmessage = ({ data }: MessageEvent<MoveAnswer>) =>
      setState((before) =>
        'figures' in data
          ? { of: [...before.of, data.figures], trouble: null }
          : { ...before, trouble: `The figures could not be worked out (${data.failure}). The order of the day stands.` },
      );
    worker.onerror = (event) => {
      event.preventDefault();
      setState((before) => ({ ...before, trouble: 'The figures could not be worked out. The order of the day stands.' }));
    };
    worker.postMessage({ move: [from, to], classroom } satisfies MoveQuestion);
    return () => worker.terminate();
  }, [classroom, from, to, isBegun]);
  return state;
}

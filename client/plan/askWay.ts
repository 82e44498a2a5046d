import { askedWork } from '../worker/askedWork.ts';
import type { WayAnswer, WayQuestion } from '../worker/wayDesk.ts';
import { withoutPicture } from '../worker/withoutPicture.ts';

export type AskWay = (question: WayQuestion) => Promise<WayAnswer>;

let stop: () => void = () => {};

/** Asks a worker, so that a large room does not hold up the drawing; a new question ends the one before. */
export const askWay: AskWay = (question) =>
  new Promise((done) => {
    stop();
    const work = askedWork<WayQuestion, WayAnswer>({
      start: () => new Worker(new URL('../worker/wayWorker.ts', import.meta.url), { type: 'module', name: 'way' }),
      hear: (answer) => finish(answer),
      fail: (why) => finish({ failure: why ?? 'this browser has no workers' }),
    });
    const finish = (answer: WayAnswer): void => {
      work.end();
      stop = () => {};
      done(answer);
    };
    stop = () => finish({ failure: 'something else was asked' });
    work.ask({ ...question, classroom: withoutPicture(question.classroom) });
  });

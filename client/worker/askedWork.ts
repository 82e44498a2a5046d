/** A worker with one question, which answers several times on its way. */
export type AskedPort<Answer> = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

interface Hooks<Answer> {
  readonly start: () => AskedPort<Answer>;
  readonly hear: (answer: Answer) => void;
  /** It cannot run here: why, in a few words; null: the browser has no such workers. */
  readonly fail: (why: string | null) => void;
}

/** Work that a person asked for, in a worker of its own: one at a time, and ended to stop it. */
export function askedWork<Question, Answer>({ start, hear, fail }: Hooks<Answer>) {
  let port: AskedPort<Answer> | null = null;

  function end(): void {
    port?.terminate();
    port = null;
  }

  return {
    end,
    ask(question: Question): void {
      end();
      try {
        port = start();
      } catch {
        fail(null);
        return;
      }
      port.onmessage = ({ data }) => hear(data);
      port.onerror = (event) => {
        event.preventDefault();
        fail(event.message || 'the browser refused');
      };
      port.postMessage(question);
    },
  };
}

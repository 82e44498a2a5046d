import { closes } from '#model/document/wire.ts';

/** Why the server closed the connection, for people: what is wrong, and what to do. Null: nothing to say, it is just offline. */
export function wordsOf(code: number | null): string | null {
  const safe = 'What you change stays on this device; save the classroom as a file to hand it on.';
  switch (code) {
    case closes.tooLarge:
      return `The server did not take the classroom: the change is too large for it, perhaps a picture. ${safe}`;
    case closes.malformed:
      return `The server could not read what this page sent. Load the page again. ${safe}`;
    case closes.notAllowed:
      return `The server does not let this address in. Ask the person who gave it to you. ${safe}`;
    case closes.unknown:
      return `The server knows no classroom under this address. ${safe}`;
    case closes.cannotSave:
      return 'The server could not save the last changes, perhaps its disk is full. They are kept on this device and sent again.';
    case closes.tryLater:
      return 'The server is busy. What you changed is kept on this device and sent again.';
    default:
      return null;
  }
}

export const LOOK_ONLY = 'This address lets you look, not change. What you change stays on this device and is not sent.';

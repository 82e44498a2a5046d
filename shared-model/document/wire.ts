/**
 * What the page and the server say to each other beyond the y-websocket protocol
 * (0 sync, 1 awareness, 3 query awareness).
 */
export const messages = {
  sync: 0,
  awareness: 1,
  queryAwareness: 3,
  /** A number; the server sends it back once all that came before on this connection is committed. */
  mark: 100,
  /** From the server, first thing: what this connection may do. */
  role: 101,
  /** From a page that may only look: one remark as JSON (remarkWish.ts). The server puts it into the classroom. */
  remark: 102,
} as const;

export const roles = { look: 0, change: 1 } as const;

/** Why the server closed. 4400 to 4499 and 1009: coming again would change nothing. */
export const closes = {
  goingAway: 1001,
  tooLarge: 1009,
  cannotSave: 1011,
  tryLater: 1013,
  malformed: 4400,
  notAllowed: 4403,
  unknown: 4404,
} as const;

export const isFinal = (code: number): boolean => code === closes.tooLarge || (code >= 4400 && code < 4500);

/** Path of the socket: this, then the classroom's id. */
export const SOCKET_PATH = '/sync';

/** The address is the key: 128 random bits, as 22 letters of base64url or 32 of hex at least. */
const idShape = /^[A-Za-z0-9_-]{22,64}$/;
export const isClassroomId = (id: string): boolean => idShape.test(id);

/** Bytes of one message: the largest classroom file (16 MiB) with what the document adds to it. */
export const LARGEST_MESSAGE = 32 * 1024 * 1024;

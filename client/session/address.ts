/** The address of a classroom: `…/#room=ID`, or `…/#look=ID` to look only. The part after # is never sent with a page request. */
const idPattern = /^[A-Za-z0-9_-]{1,64}$/;

/** The id in an address; null: none, or one that is no id. */
export function classroomInAddress(hash: string): string | null {
  const named = new URLSearchParams(hash.replace(/^#/, ''));
  const id = named.get('room') ?? named.get('look');
  return id !== null && idPattern.test(id) ? id : null;
}

/** Whether an address is one to look only. The server does not go by it: it knows the ids that may change. */
export const isForLooking = (hash: string): boolean => {
  const named = new URLSearchParams(hash.replace(/^#/, ''));
  return !named.has('room') && named.has('look');
};

/** The whole address to give to a colleague, of a classroom's id or of its id for looking. */
export function addressOf(id: string, base: string, kind: 'room' | 'look' = 'room'): string {
  const url = new URL(base);
  url.hash = `${kind}=${id}`;
  return url.href;
}

/** True for an address that means the device it is opened on, whichever that is: no tablet gets to this one by it. */
export function isThisDeviceOnly(address: string): boolean {
  const { hostname, protocol } = new URL(address);
  return protocol === 'file:' || hostname === '[::1]' || /^127(\.\d+){3}$/.test(hostname) || /(^|\.)localhost\.?$/.test(hostname);
}

/** An id that nobody guesses: whoever has the address may come in. */
export function newClassroomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

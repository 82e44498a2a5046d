/** What to tell when this device cannot keep the classroom: what is wrong, and what to do. */
export function sayStoreTrouble(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  const safe = 'Your changes are still here as long as this page is open; save the classroom as a file to be safe.';
  if (name === 'QuotaExceededError') return `This device has no room left for the classroom. Free some space on it. ${safe}`;
  if (name === 'SecurityError' || name === 'InvalidStateError' || name === 'NotFoundError')
    return `This browser does not let the page keep anything, perhaps because the window is private. ${safe}`;
  if (name === 'VersionError')
    return `Another tab runs a different version of Lowshelf. Close the other tabs and load this page again. ${safe}`;
  const detail = error instanceof Error && error.message !== '' ? ` (${error.message})` : '';
  return `This device could not keep the last changes${detail}. It will be tried again. ${safe}`;
}

/** Some rows of what the device kept cannot be read; they stay where they are. */
export const UNREADABLE =
  'A part of what this device kept cannot be read and was left out. It is not deleted; what the server or another device has comes back by itself.';

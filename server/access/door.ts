import { isClassroomId } from '#model/document/wire.ts';
import type { Storage } from '../storage/storage.ts';

export interface Admitted {
  readonly classroom: string;
  readonly mayChange: boolean;
}

/**
 * Who has a classroom's address may come in and change it; who has its address for looking may look. An address
 * that nobody used yet begins a classroom: it has to look like one that nobody guesses.
 * @returns null when the address is none.
 */
export async function admit(address: string, storage: Storage): Promise<Admitted | null> {
  if (!isClassroomId(address)) return null;
  const looked = await storage.ofView(address);
  return looked === null ? { classroom: address, mayChange: true } : { classroom: looked, mayChange: false };
}

/** The address in a socket's path; null: this is no path of a classroom. */
export function addressIn(url: string, prefix: string): string | null {
  const path = url.split('?', 1)[0] ?? '';
  if (!path.startsWith(`${prefix}/`)) return null;
  const address = path.slice(prefix.length + 1);
  return address === '' || address.includes('/') ? null : address;
}

/**
 * Another site's page must not open a socket with this one's visitors' network. Programs that are no browser
 * send no origin and come in.
 */
export function isOwnPage(origin: string | undefined, host: string | undefined, allowed: readonly string[]): boolean {
  if (origin === undefined) return true;
  if (allowed.includes(origin)) return true;
  try {
    return host !== undefined && new URL(origin).host === host;
  } catch {
    return false;
  }
}

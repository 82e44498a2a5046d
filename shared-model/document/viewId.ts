import { toBase64 } from 'lib0/buffer';
import { digest } from 'lib0/hash/sha256';

/**
 * The address for looking that belongs to a classroom's address: who has it can look, not change, and cannot
 * find the other. 128 bits of SHA-256, computed in plain script because browsers have no crypto.subtle on a
 * school's plain http address.
 */
export function viewIdOf(id: string): string {
  const bytes = new Uint8Array(id.length + 1);
  // Ids are ASCII. The leading byte keeps this use of the hash apart from any other.
  bytes[0] = 0x76;
  for (let i = 0; i < id.length; i++) bytes[i + 1] = id.charCodeAt(i);
  return toBase64(digest(bytes).slice(0, 16)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

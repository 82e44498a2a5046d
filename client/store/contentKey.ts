import { digest } from 'lib0/hash/sha256';

/** The same for values that read the same, whatever the order of their fields: SHA-256 in hex. Works on plain http too. */
export function contentKey(value: unknown): string {
  const bytes = digest(new TextEncoder().encode(JSON.stringify(value, sorted)));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

function sorted(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

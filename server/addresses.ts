import { networkInterfaces } from 'node:os';

/** Addresses under which other devices in the same network reach this machine. */
function networkAddresses(): string[] {
  return Object.values(networkInterfaces()).flatMap((list) =>
    (list ?? []).filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address),
  );
}

/** What to tell whoever started the server. */
export function greeting(host: string, wanted: number, port: number): string {
  const lines: string[] = [];
  if (wanted !== 0 && port !== wanted) lines.push(`Port ${wanted} is taken, so this is on ${port}.`);
  const isOpen = host === '0.0.0.0' || host === '::';
  lines.push(`Lowshelf is on http://${isOpen ? 'localhost' : host.includes(':') ? `[${host}]` : host}:${port}`);
  if (isOpen) for (const address of networkAddresses()) lines.push(`Tablets in the same network open http://${address}:${port}`);
  else if (host === '127.0.0.1' || host === 'localhost')
    lines.push('Only this machine reaches it. For tablets in the same network start it with HOST=0.0.0.0');
  return lines.join('\n');
}

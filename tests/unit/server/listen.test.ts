import { createServer } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { greeting } from '#server/addresses.ts';
import { listen } from '#server/listen.ts';

const servers: ReturnType<typeof createServer>[] = [];
const make = () => {
  const server = createServer();
  servers.push(server);
  return server;
};
afterEach(() => {
  for (const server of servers.splice(0)) server.close();
});

describe('listening', () => {
  it('takes the next free port when the wanted one is taken', async () => {
    const taken = await listen(make(), '127.0.0.1', 0);
    const next = await listen(make(), '127.0.0.1', taken);
    expect(next).toBeGreaterThan(taken);
    expect(next).toBeLessThanOrEqual(taken + 20);
  });

  it('gives up on a host that is not this machine', async () => {
    await expect(listen(make(), '192.0.2.1', 0)).rejects.toThrow('EADDRNOTAVAIL');
  });

  it('says where it is, that a port was taken, and how tablets come in', () => {
    expect(greeting('127.0.0.1', 8787, 8787)).toBe(
      'Lowshelf is on http://127.0.0.1:8787\nOnly this machine reaches it. For tablets in the same network start it with HOST=0.0.0.0',
    );
    expect(greeting('127.0.0.1', 8787, 8789)).toContain('Port 8787 is taken, so this is on 8789.');
    expect(greeting('0.0.0.0', 8787, 8787)).toContain('Lowshelf is on http://localhost:8787');
    expect(greeting('::1', 8787, 8787)).toContain('http://[::1]:8787');
  });
});

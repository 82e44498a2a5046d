import type { Server } from 'node:http';

/** How many ports after the wanted one are tried. */
const TRIES = 20;

/**
 * Listens on the wanted port, or the next free one after it.
 * @returns the port. @throws when none of them is free, or the host is not this machine's.
 */
export async function listen(server: Server, host: string, wanted: number): Promise<number> {
  for (let port = wanted; ; port++) {
    try {
      await new Promise<void>((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, host, () => {
          server.off('error', reject);
          resolve();
        });
      });
      const address = server.address();
      return typeof address === 'object' && address !== null ? address.port : port;
    } catch (error) {
      const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!isTaken || wanted === 0 || port >= wanted + TRIES) throw error;
    }
  }
}

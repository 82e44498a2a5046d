/** What a worker is on its own side. The page's types, which the same compiler run has, take `self` for a window. */
export const scope = self as unknown as DedicatedWorkerGlobalScope;

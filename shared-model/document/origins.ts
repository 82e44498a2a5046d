/** Where a transaction came from. Stores and connections pass theirs, so that listeners can tell. */
export const keptOrigin: unique symbol = Symbol('read from this device');
export const sharedOrigin: unique symbol = Symbol('came over the network');
/** Reading a file in: nobody's step to take back. */
export const importOrigin: unique symbol = Symbol('read from a file');

type Numbers = Uint32Array | Int32Array | Float64Array;

/** Arrays that are used again and again under their name. What is asked for is not cleared. */
export class Scratch {
  private readonly kept = new Map<string, Numbers>();

  words(name: string, length: number): Uint32Array {
    return this.take(name, length, (size) => new Uint32Array(size));
  }

  integers(name: string, length: number): Int32Array {
    return this.take(name, length, (size) => new Int32Array(size));
  }

  lengths(name: string, length: number): Float64Array {
    return this.take(name, length, (size) => new Float64Array(size));
  }

  private take<T extends Numbers>(name: string, length: number, make: (size: number) => T): T {
    const found = this.kept.get(name) as T | undefined;
    if (found && found.length >= length) return found.subarray(0, length) as T;
    const made = make(Math.max(64, 2 * length));
    this.kept.set(name, made);
    return made.subarray(0, length) as T;
  }
}

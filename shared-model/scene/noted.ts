/** Stands for the object as a whole: somebody listed its keys. */
const WHOLE = Symbol('whole');

/**
 * An object seen through a note of which of its fields were read. What was not read may change without anything that
 * was reckoned through the view being different. The fields themselves are frozen: their identity stands for what they hold.
 */
export class Noted<T extends object> {
  readonly view: T;
  private read = new Set<PropertyKey>();

  /** @param within fields that are seen through notes of their own, and so not noted here */
  constructor(
    private now: T,
    private readonly within: Partial<T> | null = null,
  ) {
    // The handler reads the fields of what stands behind the note.
    this.view = new Proxy(this, handler) as unknown as T;
  }

  /** Looks at `next` from now on. True when every field read so far is still the very same. */
  moveTo(next: T): boolean {
    const before = this.now;
    this.now = next;
    if (before === next) return true;
    for (const key of this.read) if (key === WHOLE || !Object.is(fieldOf(before, key), fieldOf(next, key))) return false;
    return true;
  }

  forget(): void {
    // A new one each time: a set that was cleared leaves what it held to the next, which costs every frame of a drag.
    if (this.read.size > 0) this.read = new Set();
  }

  field(key: PropertyKey): unknown {
    if (this.within && Object.hasOwn(this.within, key)) return fieldOf(this.within, key);
    this.read.add(key);
    return fieldOf(this.now, key);
  }

  whole(): T {
    this.read.add(WHOLE);
    return this.now;
  }
}

const fieldOf = (object: object, key: PropertyKey): unknown => (object as Record<PropertyKey, unknown>)[key];

const handler: ProxyHandler<Noted<object>> = {
  get: (noted, key) => noted.field(key),
  has: (noted, key) => key in noted.whole(),
  ownKeys: (noted) => Reflect.ownKeys(noted.whole()),
  getOwnPropertyDescriptor(noted, key) {
    const whole = noted.whole();
    return Object.hasOwn(whole, key) ? { value: noted.field(key), enumerable: true, configurable: true, writable: false } : undefined;
  },
  set: () => false,
};

import { Noted } from '../scene/noted.ts';
import { SceneReads } from '../scene/sceneReads.ts';
import type { Scene } from '../scene/types.ts';
import { type Known, type MeasureName, type Measures, type MeasureValues, measuresBy } from './values.ts';

/** The moment that is looked at: the scene, and the measures of it by name. */
export interface Desk {
  readonly scene: Scene;
  readonly known: Known;
  /** Rises with every change. */
  readonly version: number;
  measure<K extends MeasureName>(name: K): MeasureValues[K];
}

/** What a value is reckoned from. Whatever is read of it is noted. */
export interface Reading<T> {
  readonly scene: Scene;
  readonly measures: Measures;
  readonly known: Known;
  /** The value of before the change: what of it still holds can be used again. */
  readonly before: T | undefined;
}

/**
 * A value reckoned from a scene and from measures, and kept as long as nothing that it read is different: fields by
 * identity, measures by having been reckoned anew. It may read more later on (a part worked out on demand): that is noted too,
 * and since all it read before is the same, it gets the same as if it had been reckoned from the start.
 */
export class Kept<T> {
  private readonly reads: SceneReads;
  private readonly known: Noted<Known>;
  private readonly measures: Measures;
  private used = new Map<MeasureName, unknown>();
  private value: { readonly is: T } | null = null;
  private input: unknown;
  private version = -1;

  /** @param onReckon told each time that the value is reckoned anew */
  constructor(
    private readonly desk: Desk,
    private readonly reckon: (from: Reading<T>, input: unknown) => T,
    private readonly onReckon: () => void = () => undefined,
  ) {
    this.reads = new SceneReads(desk.scene);
    this.known = new Noted(desk.known);
    this.measures = measuresBy((name) => this.use(name));
  }

  /** @param input something else that the value depends on, by identity */
  get(input?: unknown): T {
    const { desk } = this;
    if (this.value && this.version === desk.version && this.input === input) return this.value.is;
    const isSame = [this.reads.moveTo(desk.scene), this.known.moveTo(desk.known), this.input === input].every(Boolean);
    if (this.value && isSame && this.usesTheSame()) {
      this.version = desk.version;
      return this.value.is;
    }
    const before = this.value?.is;
    this.value = null;
    this.reads.forget();
    this.known.forget();
    if (this.used.size > 0) this.used = new Map();
    this.onReckon();
    const is = this.reckon({ scene: this.reads.view, measures: this.measures, known: this.known.view, before }, input);
    this.value = { is };
    this.input = input;
    this.version = desk.version;
    return is;
  }

  private usesTheSame(): boolean {
    // In the order of use: what came first decided whether the next was asked for at all.
    for (const [name, was] of this.used) if (this.desk.measure(name) !== was) return false;
    return true;
  }

  private use<K extends MeasureName>(name: K): MeasureValues[K] {
    const value = this.desk.measure(name);
    if (!this.used.has(name)) this.used.set(name, value);
    return value;
  }
}

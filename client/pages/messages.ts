import type { Report } from '#model/analysis/report.ts';
import type { PlainRoomChange } from '#model/rules/plainRoom.ts';
import type { Classroom } from '#model/schema/types.ts';

/** What a page asks of its worker: what its check says of its rooms. */
export interface PageQuestion {
  readonly rule: string;
  readonly rooms: readonly PlainRoomChange[];
}

export interface JudgedRoom {
  readonly classroom: Classroom;
  /** Of this one check, with the figures that the drawing shows. */
  readonly report: Report;
}

export interface PageAnswer {
  readonly rule: string;
  readonly sources: readonly string[];
  /** Options with their defaults. */
  readonly defaults: Readonly<Record<string, unknown>>;
  readonly rooms: readonly JudgedRoom[];
}

/** In words, when the rooms could not be judged. */
export interface PageFailure {
  readonly rule: string;
  readonly failure: string;
}

import type * as Y from 'yjs';
import type { Edit } from '../findings/edit.ts';
import type {
  Arrangement,
  Classroom,
  Corner,
  Fixture,
  Left,
  Level,
  Material,
  Note,
  Opening,
  Piece,
  Placement,
  Room,
  WatchPlace,
  Zone,
} from '../schema/types.ts';

import type { Version } from './version.ts';

/** A new thing without the fields that have defaults; the id is made when left out. */
export type New<T> = Partial<T>;

/**
 * One classroom as a living document. Everything the client does goes through `commands`;
 * everything it shows comes from `read`.
 */
export interface ClassroomDocument {
  readonly doc: Y.Doc;
  /** Frozen. The same object until something changes; entries that did not change keep their identity. */
  read(): Classroom;
  /** Entries that do not parse: kept in the document, never drawn, analysed or deleted. */
  needsRepair(): readonly NeedsRepair[];
  /** Called after each transaction. @returns a function that stops it. */
  onChange(listener: (change: Change) => void): () => void;
  readonly commands: Commands;
  readonly undo: PersonalUndo;
  destroy(): void;
}

export interface Change {
  /** own: a command here; others: came from elsewhere; kept: read from this device's store; undo: taken back here. */
  readonly from: 'own' | 'others' | 'kept' | 'undo';
}

export interface NeedsRepair {
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

export interface PersonalUndo {
  canTakeBack(): boolean;
  canDoAgain(): boolean;
  /** Takes back this person's own last step. */
  takeBack(): void;
  doAgain(): void;
  /** Between begin and end (a drag) all steps count as one. */
  beginStep(): void;
  endStep(): void;
}

/**
 * Named intents, one transaction each. A command on a thing that is gone does nothing and returns false;
 * one that adds returns the new id. Lengths mm, rotations degrees clockwise.
 */
export interface Commands {
  addPiece(arrangement: string, piece: New<Piece> & Pick<Piece, 'kind' | 'x' | 'y' | 'width' | 'depth'>): string;
  movePiece(arrangement: string, piece: string, to: { x: number; y: number; rotation?: number }): boolean;
  changePiece(arrangement: string, piece: string, set: Partial<Omit<Piece, 'id' | 'levels'>>): boolean;
  /** The piece goes; its trays are on the table. */
  putAwayPiece(arrangement: string, piece: string): boolean;
  addLevel(arrangement: string, piece: string, level: New<Level> & Pick<Level, 'surface'>): string;
  changeLevel(arrangement: string, piece: string, level: string, set: Partial<Omit<Level, 'id'>>): boolean;
  removeLevel(arrangement: string, piece: string, level: string): boolean;

  place(arrangement: string, placement: Placement): boolean;
  putAway(arrangement: string, material: string): boolean;
  setWalk(arrangement: string, walk: NonNullable<Arrangement['walk']>): boolean;
  setWatch(arrangement: string, watch: readonly WatchPlace[]): boolean;

  addMaterial(material: New<Material> & Pick<Material, 'name'>): string;
  changeMaterial(material: string, set: Partial<Omit<Material, 'id'>>): boolean;
  removeMaterial(material: string): boolean;

  setCorners(corners: readonly Corner[]): boolean;
  moveCorner(corner: string, to: { x: number; y: number }): boolean;
  addOpening(opening: New<Opening> & Pick<Opening, 'kind' | 'from' | 'offset' | 'width'>): string;
  changeOpening(opening: string, set: Partial<Omit<Opening, 'id'>>): boolean;
  removeOpening(opening: string): boolean;
  addFixture(fixture: New<Fixture> & Pick<Fixture, 'kind' | 'x' | 'y' | 'width' | 'depth'>): string;
  changeFixture(fixture: string, set: Partial<Omit<Fixture, 'id'>>): boolean;
  removeFixture(fixture: string): boolean;
  setZones(zones: readonly Zone[]): boolean;
  /** toilets, basins, otherRooms, survey, picture */
  changeRoom(set: Partial<Pick<Room, 'otherRooms' | 'toilets' | 'basins' | 'survey' | 'picture'>>): boolean;

  /** Everything of the class that is no list of things with ids. */
  changeClass(
    set: Partial<
      Pick<
        Classroom,
        | 'name'
        | 'display'
        | 'children'
        | 'adults'
        | 'enrolment'
        | 'ruleSet'
        | 'exitRules'
        | 'sprinklered'
        | 'service'
        | 'asked'
        | 'options'
        | 'access'
        | 'floorWork'
      >
    >,
  ): boolean;

  /** Ticks and notes of the move day, key by key; undefined takes a key out, an object merges key by key. */
  changeMoveDay(set: Readonly<Record<string, unknown>>): boolean;

  addArrangement(name: string, copyOf?: string): string;
  renameArrangement(arrangement: string, name: string): boolean;
  removeArrangement(arrangement: string): boolean;
  setCurrent(arrangement: string): boolean;

  /** @param was how it is now: once it is worse it is open again */
  leave(key: string, reason: string, by: string, was?: Left['was']): boolean;
  takeUpAgain(key: string): boolean;
  addRemark(remark: New<Note> & Pick<Note, 'text'>): string;
  changeRemark(remark: string, set: Partial<Omit<Note, 'id'>>): boolean;

  /** Writes versions into the thing at a path of the document (overwritten.ts): what was overwritten, or the mend of a field. */
  setBack(path: readonly string[], fields: Readonly<Record<string, Version>>): boolean;
  /** Takes a field or a whole thing out of the thing at a path. */
  takeOut(path: readonly string[], key: string): boolean;

  /** A fix: all edits in one transaction, one step of undo. */
  applyEdits(arrangement: string, edits: readonly Edit[]): boolean;
}

import type { z } from 'zod';
import * as arrangements from '../schema/arrangement.ts';
import { childGroup, children } from '../schema/children.ts';
import * as classes from '../schema/classroom.ts';
import { material } from '../schema/material.ts';
import { text } from '../schema/primitives.ts';
import * as rooms from '../schema/room.ts';

/**
 * How a part of the classroom file lies in the Y.Doc.
 * value: whole, the last writer wins. fields: a Y.Map with a key per field, so that two people who change
 * two fields both win. byId: things with ids as a Y.Map of Y.Maps, their order in the file kept as a number
 * beside each. list: a Y.Array of Y.Maps, for the two lists whose order is their meaning.
 */
export type Shape = ValueShape | FieldsShape | ByIdShape | ListShape;
interface ValueShape {
  readonly as: 'value';
}
export interface FieldsShape {
  readonly as: 'fields';
  readonly fields: ReadonlyMap<string, Shape>;
  /** How fields that are not named above lie. */
  readonly rest: ValueShape | FieldsShape;
}
/** A thing: its fields, and the schema of those that are no lists of things. */
export interface EntryShape extends FieldsShape {
  readonly own: z.ZodType;
}
export interface ByIdShape {
  readonly as: 'byId';
  readonly idKey: string;
  readonly entry: EntryShape;
  /** Whether two entries may carry one id in a file (then the second is kept under a key of its own). */
  readonly mayRepeat: boolean;
  /** Whether "absent" and "empty" differ in a file. */
  readonly mayBeAbsent: boolean;
}
export interface ListShape {
  readonly as: 'list';
  readonly entry: EntryShape;
  /** Two entries that stand for the same thing. */
  readonly identity: (entry: Record<string, unknown>) => string;
}

const value: ValueShape = { as: 'value' };
export const record: FieldsShape = { as: 'fields', fields: new Map(), rest: value };
const recordOfRecords: FieldsShape = { as: 'fields', fields: new Map(), rest: record };

const fields = (named: Readonly<Record<string, Shape>>, rest: ValueShape | FieldsShape = value): FieldsShape => ({
  as: 'fields',
  fields: new Map(Object.entries(named)),
  rest,
});
const entry = (own: z.ZodType, named: Readonly<Record<string, Shape>> = {}): EntryShape => ({ ...fields(named), own });
const byId = (of: EntryShape, rules: { idKey?: string; mayRepeat?: boolean; mayBeAbsent?: boolean } = {}): ByIdShape => ({
  as: 'byId',
  idKey: rules.idKey ?? 'id',
  entry: of,
  mayRepeat: rules.mayRepeat ?? false,
  mayBeAbsent: rules.mayBeAbsent ?? false,
});

const levels = byId(entry(arrangements.level));
const pieces = byId(entry(arrangements.piece.omit({ levels: true }), { levels, seatSides: record }));
const placements = byId(entry(arrangements.placement), { idKey: 'material' });
const watch = byId(entry(arrangements.watchPlace), { mayBeAbsent: true });
const walkStep = arrangements.arrangement.shape.walk.unwrap().element;
const walk: ListShape = {
  as: 'list',
  entry: entry(walkStep),
  identity: (step) => `${String(step.piece)}/${String(step.side)}`,
};
const arrangementEntry = entry(arrangements.arrangement.omit({ pieces: true, placements: true, watch: true, walk: true }), {
  pieces,
  placements,
  watch,
  walk,
});
const groups = byId(entry(childGroup), { mayRepeat: true });

/** Lists that have a root of their own in the document. */
export const layout = {
  materials: byId(entry(material, { afterSure: record, sure: record })),
  arrangements: byId(arrangementEntry),
  openings: byId(entry(rooms.opening)),
  fixtures: byId(entry(rooms.fixture)),
  zones: byId(entry(rooms.zone)),
  notes: byId(entry(classes.note)),
  left: byId(entry(classes.left), { idKey: 'key', mayRepeat: true }),
  // Roots of their own, so that two people who tape two walls before they meet both keep their lengths.
  surveyWalls: byId(entry(rooms.survey.shape.walls.unwrap().element), { idKey: 'from', mayRepeat: true }),
  surveyDiagonals: byId(entry(rooms.survey.shape.diagonals.unwrap().element), { idKey: 'from', mayRepeat: true }),
  corners: { as: 'list', entry: entry(rooms.corner), identity: (corner) => String(corner.id) } satisfies ListShape,
  pieces,
  levels,
  placements,
  watch,
  walk,
  moveDay: recordOfRecords,
  survey: fields({}),
} as const;

/** The part of the room that is no list of things with ids. */
const roomOwn = rooms.room.omit({ corners: true, openings: true, fixtures: true, zones: true });
export const roomShape: EntryShape = entry(roomOwn, { survey: layout.survey, picture: record });

export const childrenShape: EntryShape = entry(children.omit({ groups: true }), { groups });

const settingsOwn = classes.classroom
  .omit({
    format: true,
    version: true,
    children: true,
    room: true,
    materials: true,
    arrangements: true,
    left: true,
    notes: true,
    moveDay: true,
  })
  // A document that has not come yet has no name.
  .extend({ name: text.default('') });

/** Everything of the class beside its lists. */
export const settingsShape: EntryShape = entry(settingsOwn, {
  display: record,
  children: childrenShape,
  access: record,
  floorWork: fields({ mat: record }),
  asked: record,
  options: recordOfRecords,
  room: roomShape,
});

/** Keys of a Y.Map that begin with the mark are ours; a file key that begins with it gets a second one. */
const MARK = '~';
export const orderKey = `${MARK}order`;
export const idFieldKey = `${MARK}id`;
export const absentKey = `${MARK}absent`;
export const isMark = (key: string): boolean => key.startsWith(MARK) && !key.startsWith(MARK + MARK);
export const toDocKey = (fileKey: string): string => (fileKey.startsWith(MARK) ? MARK + fileKey : fileKey);
export const toFileKey = (docKey: string): string => (docKey.startsWith(MARK + MARK) ? docKey.slice(1) : docKey);

export const shapeOf = (shape: FieldsShape, fileKey: string): Shape => shape.fields.get(fileKey) ?? shape.rest;

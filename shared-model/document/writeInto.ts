import type * as Y from 'yjs';
import type { Classroom } from '../schema/types.ts';
import { mapAt, writeById, writeFields, writeList } from './encode.ts';
import { childrenShape, layout, roomShape, settingsShape } from './layout.ts';
import { importOrigin } from './origins.ts';
import { cleanJson, isPlainObject, type Plain } from './plain.ts';
import { cornersOf, moveDayOf, type RootMap, rootOf, settingsOf } from './roots.ts';

/**
 * Makes a document hold this classroom, in one transaction: what is there and not in the classroom goes.
 * @throws UnfitValue when the classroom has a reserved key ("__proto__", "constructor", "prototype"); nothing is written then.
 */
export function writeInto(doc: Y.Doc, classroom: Classroom, origin: unknown = importOrigin): void {
  // A transaction that throws half-way is not rolled back, so reserved keys are looked for before. Ids are judged by the schema.
  cleanJson(classroom, 'classroom');
  doc.transact(() => {
    const { format: _f, version: _v, children, room, materials, arrangements, left, notes, moveDay, ...settings } = classroom;
    const target = settingsOf(doc);
    const ticked = isPlainObject(moveDay) && Object.keys(moveDay).length > 0;
    const own: Plain = { ...settings, ...(ticked || moveDay === null ? {} : { moveDay }) };
    const { corners, openings, fixtures, zones, survey, ...roomOwn } = room;
    const { walls = [], diagonals = [], ...surveyOwn } = survey ?? {};

    writeFields(target, settingsShape, { ...own, children: {}, room: {} }, 'whole');
    writeFields(mapAt(target, 'children'), childrenShape, children, 'whole');
    writeFields(mapAt(target, 'room'), roomShape, { ...roomOwn, survey: survey === null ? null : surveyOwn }, 'whole');
    writeList(cornersOf(doc), layout.corners, corners);
    writeFields(moveDayOf(doc), layout.moveDay, ticked ? moveDay : {}, 'whole');
    const lists: Record<RootMap, readonly unknown[]> = {
      materials,
      arrangements,
      openings,
      fixtures,
      zones,
      notes,
      left,
      surveyWalls: walls,
      surveyDiagonals: diagonals,
    };
    for (const [name, list] of Object.entries(lists) as [RootMap, readonly unknown[]][]) writeById(rootOf(doc, name), layout[name], list);
  }, origin);
}

import type * as Y from 'yjs';
import { FORMAT, VERSION } from '../schema/classroom.ts';
import type { Classroom } from '../schema/types.ts';
import { plainOf } from './decode.ts';
import { layout, settingsShape } from './layout.ts';
import { freezeDeep, isPlainObject, type Plain, sameJson, UnfitValue } from './plain.ts';
import { type Found, noProblems, readById, readList, readSettings } from './readEntries.ts';
import { createMemory, sameFields } from './remember.ts';
import { cornersOf, isBlank, moveDayOf, type RootMap, rootOf, settingsOf } from './roots.ts';
import type { NeedsRepair } from './types.ts';

export interface Reader {
  /**
   * The classroom as the document has it: every entry judged by itself, references between entries not.
   * Untouched entries, lists and fields are the very objects they were at the last reading.
   */
  read(): Found<Classroom>;
  /** These Y types changed. */
  forget(parts: Iterable<object>): void;
}

export function createReader(doc: Y.Doc): Reader {
  const memory = createMemory();
  const before: { room?: Plain; survey?: Plain; classroom?: Plain } = {};

  const survey = (own: unknown, walls: Plain[], diagonals: Plain[]): Plain | null => {
    // Null as long as nothing was taped.
    if (!isPlainObject(own) && walls.length === 0 && diagonals.length === 0) return null;
    before.survey = sameFields(before.survey, { ...(isPlainObject(own) ? own : {}), walls, diagonals });
    return before.survey;
  };

  /** What was ticked off, one key each; a value of another form lies whole in the settings. */
  const readMoveDay = (): Found<Plain | null> =>
    memory.of<Found<Plain | null>>(moveDayOf(doc), (last) => {
      try {
        const ticked = plainOf(moveDayOf(doc), layout.moveDay, 'moveDay') as Plain;
        if (Object.keys(ticked).length === 0) return { value: null, problems: noProblems };
        return last && sameJson(last.value, ticked) ? last : { value: freezeDeep(ticked), problems: noProblems };
      } catch (error) {
        if (!(error instanceof UnfitValue)) throw error;
        return { value: null, problems: [{ path: error.path, found: error.found, expected: error.expected }] };
      }
    });

  const read = (): Found<Classroom> => {
    const problems: NeedsRepair[] = [];
    const take = <T>(found: Found<T>): T => {
      problems.push(...found.problems);
      return found.value;
    };
    const list = (name: RootMap): Plain[] => take(readById(memory, rootOf(doc, name), layout[name], name));

    const { room, children, ...own } = take(readSettings(memory, settingsOf(doc), settingsShape, 'classroom'));
    const roomOwn = isPlainObject(room) ? room : bareRoom;
    const walls = {
      corners: take(readList(memory, cornersOf(doc), layout.corners, 'corners')),
      openings: list('openings'),
      fixtures: list('fixtures'),
      zones: list('zones'),
    };
    before.room = sameFields(before.room, {
      ...walls,
      ...roomOwn,
      ...walls,
      survey: survey(roomOwn.survey, list('surveyWalls'), list('surveyDiagonals')),
    });
    const classroom = {
      format: FORMAT,
      version: VERSION,
      ...own,
      children: children ?? bareChildren,
      room: before.room,
      materials: list('materials'),
      arrangements: list('arrangements'),
      moveDay: take(readMoveDay()) ?? own.moveDay ?? null,
      left: list('left'),
      notes: list('notes'),
    };
    before.classroom = sameFields(before.classroom, Object.assign(classroom, { format: FORMAT, version: VERSION }));
    // Every list was read through its own schema; the whole is a Classroom but for its references.
    const value = before.classroom as unknown as Classroom;
    return { value, problems: isBlank(doc) || problems.length === 0 ? noProblems : problems };
  };

  return { read, forget: memory.forget };
}

/** What a document that has not come yet reads as. */
const bareChildren = freezeDeep({ growth: 'cdc-2000', percentile: 5, smallestStature: null, head: 550, groups: [] });
const bareRoom: Plain = freezeDeep({ otherRooms: [], toilets: null, basins: null, survey: null, picture: null });

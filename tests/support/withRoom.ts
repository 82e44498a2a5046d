import { writeClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

/** Whatever the check throws comes with the room it was about: a classroom file, to be saved, opened and looked at. */
export function withRoom<T>(label: string, classroom: Classroom, check: () => T): T {
  try {
    return check();
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    throw new Error(`${label}: ${said}\n\nThe room, as a classroom file:\n${writeClassroomFile(classroom)}`, { cause: error });
  }
}

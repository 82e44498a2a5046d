import type { Classroom } from '../schema/types.ts';
import { createReader } from './readDocument.ts';
import { fitForFile } from './repair.ts';
import { rawOf } from './setAside.ts';
import type { ClassroomDocument } from './types.ts';

/**
 * The classroom as a file has it: everything that was read in or made since, unknown keys included, references as
 * they are. Entries that do not parse go into an extra list "needsRepair", so that a file can be read and nothing is lost.
 */
export function exportClassroom(document: Pick<ClassroomDocument, 'doc'>): Classroom {
  const { value, problems } = createReader(document.doc).read();
  const classroom = fitForFile(value);
  if (problems.length === 0) return classroom;
  const needsRepair = problems.map((problem) => ({ ...problem, entry: rawOf(document.doc, problem.path) }));
  return { ...classroom, needsRepair } as Classroom;
}

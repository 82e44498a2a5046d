import { exportClassroom } from '#model/document/exportClassroom.ts';
import { writeClassroomFile } from '#model/schema/readFile.ts';
import type { Session } from '../session/types.ts';

/** Hands the classroom over as a file; the browser asks where to put it. */
export function saveFile(session: Session): void {
  const { needsRepair } = exportClassroom(session.document) as { needsRepair?: unknown };
  // What does not parse goes along in a list of its own: nothing is lost.
  const classroom = { ...session.classroom(), ...(needsRepair !== undefined && { needsRepair }) };
  const name = fileNameOf(classroom.name);
  saveText(writeClassroomFile(classroom), name);
  session.announce(`Saved as ${name}.`);
}

/** The browser asks where to put it. */
export function saveText(json: string, name: string): void {
  const url = URL.createObjectURL(new Blob([json], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** "Juniper room" -> "juniper-room.lowshelf.json" */
export function fileNameOf(name: string): string {
  const plain = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${plain || 'classroom'}.lowshelf.json`;
}

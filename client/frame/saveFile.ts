import { writeClassroomFile } from '#model/schema/readFile.ts';
import type { Session } from '../session/types.ts';

/** Hands the classroom over as a file; the browser asks where to put it. */
export function saveFile(session: Session): void {
  const classroom = session.classroom();
  const url = URL.createObjectURL(new Blob([writeClassroomFile(classroom)], { type: 'application/json' }));
  const name = fileNameOf(classroom.name);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  session.announce(`Saved as ${name}.`);
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

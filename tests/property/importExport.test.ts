import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { exportClassroom } from '#model/document/exportClassroom.ts';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { writeInto } from '#model/document/writeInto.ts';
import { readClassroomFile, writeClassroomFile } from '#model/schema/readFile.ts';
import { anyClassroom } from '../support/anyClassroom.ts';

const rooms = new URL('../bench/rooms/', import.meta.url);

describe('a classroom file survives the document', () => {
  it('comes out as it went in, unknown keys at every level included', () => {
    fc.assert(
      fc.property(anyClassroom, (classroom) => {
        const document = createDocument(classroom);
        expect(document.needsRepair().filter(({ expected }) => !expected.includes('that is there'))).toEqual([]);
        expect(exportClassroom(document)).toEqual(classroom);
        document.destroy();
      }),
      { numRuns: 150 },
    );
  });

  it('comes out the same from a second device', () => {
    fc.assert(
      fc.property(anyClassroom, (classroom) => {
        const there = new Y.Doc();
        Y.applyUpdate(there, Y.encodeStateAsUpdate(createDocument(classroom).doc));
        expect(exportClassroom(openDocument(there))).toEqual(classroom);
      }),
      { numRuns: 50 },
    );
  });

  it('replaces whatever a document held', () => {
    fc.assert(
      fc.property(anyClassroom, anyClassroom, (first, second) => {
        const document = createDocument(first);
        writeInto(document.doc, second);
        expect(exportClassroom(document)).toEqual(second);
      }),
      { numRuns: 60 },
    );
  });

  for (const name of readdirSync(rooms).filter((file) => file.endsWith('.json')))
    it(`keeps ${name} whole`, () => {
      const read = readClassroomFile(readFileSync(new URL(name, rooms), 'utf8'));
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const document = createDocument(read.classroom);
      expect(document.needsRepair()).toEqual([]);
      const file = writeClassroomFile(exportClassroom(document));
      const again = readClassroomFile(file);
      expect(again).toEqual({ ok: true, classroom: read.classroom });
      expect(document.read()).toEqual(read.classroom);
    });
});

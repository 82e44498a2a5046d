import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { limits } from '#model/schema/limits.ts';
import { type Migration, migrate } from '#model/schema/migrations.ts';
import { readClassroom, readClassroomFile, writeClassroomFile } from '#model/schema/readFile.ts';
import { plainRoomFile } from '#tests/support/plainRoom.ts';

const plain = () => JSON.parse(JSON.stringify(plainRoomFile()));
const problemsOf = (json: unknown) => {
  const read = readClassroom(json);
  return read.ok ? [] : read.problems;
};

describe('reading a classroom file', () => {
  it('fills what is left out with the defaults of the format', () => {
    const read = readClassroom(plain());
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(read.classroom.access).toMatchObject({
      routeWidth: 915,
      pinchWidth: 815,
      pinchLength: 610,
      turning: 1525,
      leastWidth: 711,
      frontStrip: 600,
    });
    expect(read.classroom.floorWork).toMatchObject({ mat: { width: 1200, depth: 750 }, gap: 300, wanted: null });
    expect(read.classroom.children).toMatchObject({ growth: 'cdc-2000', percentile: 5, head: 550, smallestStature: null });
    expect(read.classroom.adults).toEqual([
      { role: 'lead', count: 1 },
      { role: 'assistant', count: 1 },
    ]);
  });

  it('keeps keys it does not know, at every level, and writes them back', () => {
    const file = plain();
    file.colour = 'blue';
    file.room.height = 2700;
    file.room.corners[0].note = 'by the window';
    file.arrangements[0].pieces = [
      { id: 's1', kind: 'shelf', x: 1, y: 2, width: 3, depth: 4, made: { by: 'us' }, levels: [{ id: 'l', surface: 1, felt: true }] },
    ];
    file.materials = [{ id: 'm1', name: 'Cubes', box: 'green' }];
    const read = readClassroom(file);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    const again = JSON.parse(writeClassroomFile(read.classroom));
    expect(again).toMatchObject(file.colour ? { colour: 'blue', room: { height: 2700 } } : {});
    expect(again.room.corners[0].note).toBe('by the window');
    expect(again.arrangements[0].pieces[0]).toMatchObject({ made: { by: 'us' }, levels: [{ felt: true }] });
    expect(again.materials[0].box).toBe('green');
    expect(readClassroomFile(JSON.stringify(again))).toEqual(read);
  });

  it('refuses a newer version with a clear message', () => {
    expect(problemsOf({ ...plain(), version: 2 })).toEqual([
      { path: 'version', found: '2', expected: expect.stringContaining('newer Lowshelf') },
    ]);
  });

  it.each<[string, (file: ReturnType<typeof plain>) => void, string, string, string]>([
    [
      'another format',
      (f) => {
        f.format = 'drawing';
      },
      'format',
      '"drawing"',
      '"lowshelf.classroom"',
    ],
    [
      'no version',
      (f) => {
        delete f.version;
      },
      'version',
      'nothing',
      'whole number',
    ],
    [
      'a text for a number',
      (f) => {
        f.room.corners[1].x = '6000';
      },
      'room.corners[1].x',
      '"6000"',
      'a number',
    ],
    [
      'a coordinate past any room',
      (f) => {
        f.room.corners[1].x = 1e9;
      },
      'room.corners[1].x',
      '1000000000',
      'at most 1000000',
    ],
    [
      'two corners',
      (f) => {
        f.room.corners.length = 2;
      },
      'room.corners',
      '[{"id":"c1"',
      'at least 3 entries',
    ],
    [
      'an id twice',
      (f) => {
        f.room.corners[1].id = 'c1';
      },
      'room.corners[1].id',
      '"c1"',
      'no other corner',
    ],
    [
      'a zero width',
      (f) => {
        f.room.openings[0].width = 0;
      },
      'room.openings[0].width',
      '0',
      'more than 0',
    ],
    [
      'an unknown kind',
      (f) => {
        f.arrangements[0].pieces = [{ id: 'p', kind: 'sofa', x: 0, y: 0, width: 1, depth: 1 }];
      },
      'arrangements[0].pieces[0].kind',
      '"sofa"',
      '"shelf"',
    ],
    [
      'an unknown role',
      (f) => {
        f.adults = [{ role: 'boss', count: 1 }];
      },
      'adults[0].role',
      '"boss"',
      '"lead" or',
    ],
    [
      'a reserved id',
      (f) => {
        f.materials = [{ id: 'constructor', name: 'x' }];
      },
      'materials[0].id',
      '"constructor"',
      'reserved',
    ],
    [
      'a material placed twice',
      (f) => {
        f.arrangements[0].placements = [
          { material: 'm', piece: 's', x: 0 },
          { material: 'm', piece: 's', x: 9 },
        ];
      },
      'arrangements[0].placements[1].material',
      '"m"',
      'placed once',
    ],
    [
      'too many pieces',
      (f) => {
        f.arrangements[0].pieces = Array.from({ length: limits.pieces + 1 }, (_, i) => ({
          id: `p${i}`,
          kind: 'other',
          x: 0,
          y: 0,
          width: 1,
          depth: 1,
        }));
      },
      'arrangements[0].pieces',
      '[{"id":"p0"',
      'at most 1000 entries',
    ],
  ])('says where, what was found and what was expected: %s', (_, spoil, path, found, expected) => {
    const file = plain();
    spoil(file);
    const problem = problemsOf(file)[0];
    expect(problem?.path).toBe(path);
    expect(problem?.found).toContain(found);
    expect(problem?.expected).toContain(expected);
  });

  it.each(['', '{', '[]', 'null', '"x"', '12'])('never throws on %j', (text) => {
    expect(readClassroomFile(text).ok).toBe(false);
  });
  it('refuses more than 16 MB before reading them', () => {
    const read = readClassroomFile(`"${'ü'.repeat(9 * 1024 * 1024)}"`);
    expect(!read.ok && read.problems[0]).toMatchObject({ path: '(file)', found: '18.0 MB', expected: 'at most 16 MB' });
  });
  it('does not let a file reach into objects', () => {
    const read = readClassroomFile(`{"__proto__": {"polluted": 1}, ${JSON.stringify(plain()).slice(1)}`);
    expect(read.ok).toBe(true);
    expect(read.ok ? read.classroom : {}).not.toHaveProperty('polluted');
    expect({}).not.toHaveProperty('polluted');
  });
});

describe('older versions', () => {
  const steps = new Map<number, Migration>([
    [1, (file) => ({ ...file, b: 1 })],
    [2, (file) => ({ ...file, c: file.b })],
  ]);
  it('are brought up step by step', () => {
    expect(migrate({ version: 1 }, 1, steps, 3)).toEqual({ file: { version: 3, b: 1, c: 1 }, stuckAt: null });
  });
  it('a missing step is told', () => expect(migrate({ version: 1 }, 1, steps, 4).stuckAt).toBe(3));
});

describe('the rooms kept for measuring', () => {
  const folder = resolve(import.meta.dirname, '../../bench/rooms');
  it.each(readdirSync(folder).filter((name) => name.endsWith('.json')))('%s round trips', (name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    const read = readClassroomFile(text);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(JSON.parse(writeClassroomFile(read.classroom))).toMatchObject(JSON.parse(text));
  });
});

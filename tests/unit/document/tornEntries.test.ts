import { describe, expect, it } from 'vitest';
import { sayEntries } from '#client/start/sayEntries.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { withTornEntries } from '#model/document/tornEntries.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

interface Json {
  [key: string]: Json | undefined;
}
const whole = plainRoom({
  pieces: [shelf('s1'), shelf('s2', { name: 'Pouring', x: 4000 })],
  materials: [tray('m1'), tray('m2', { name: 'Rods' })],
  placements: placed({ 's1-1': ['m1', 'm2'] }),
});

/** The file with something spoilt in it, read. */
function torn(spoil: (file: Json) => void) {
  const file = JSON.parse(JSON.stringify(whole)) as Json;
  spoil(file);
  const read = readClassroom(file);
  expect(read.ok).toBe(false);
  return !read.ok && read.torn ? withTornEntries(read.torn) : null;
}
const put = (at: Json | undefined, key: string, value: unknown): void => void Object.assign(at ?? {}, { [key]: value });
const pieces = (file: Json): Json => file.arrangements?.[0]?.pieces ?? {};

describe('a file in which single things cannot be read', () => {
  it.each<[string, (file: Json) => void, string]>([
    ['a shelf’s width', (file) => put(pieces(file)[1], 'width', 'wide'), 'the shelf “Pouring”'],
    ['a board of a shelf', (file) => put(pieces(file)[1]?.levels?.[0], 'surface', 'high'), 'the shelf “Pouring”'],
    ['a material’s mass', (file) => put(file.materials?.[1], 'mass', 'heavy'), 'the material “Rods”'],
    ['the width of a door', (file) => put(file.room?.openings?.[0], 'width', -5), 'the door without a name'],
    ['a kind that is none', (file) => put(file.room?.openings?.[0], 'kind', 'constructor'), 'the door or window without a name'],
    ['where a tray stands', (file) => put(file.arrangements?.[0]?.placements?.[0], 'x', 'left'), 'the place of a tray “m1”'],
  ])('%s: the rest is opened, and the thing is kept as it is and named', (_, spoil, name) => {
    const found = torn(spoil);
    expect(found && sayEntries(found.entries)).toBe(name);
    const document = createDocument((found as NonNullable<typeof found>).classroom);
    // The tray of a material that cannot be read is on no shelf meanwhile.
    expect(document.needsRepair()).toHaveLength(1);
    const read = document.read();
    const count = (of: typeof whole): number =>
      of.materials.length +
      of.room.openings.length +
      (of.arrangements[0]?.pieces.length ?? 0) +
      (of.arrangements[0]?.placements.length ?? 0);
    expect(count(read)).toBeGreaterThanOrEqual(count(whole) - 2);
  });

  it('two of them are both named', () => {
    const found = torn((file) => {
      put(pieces(file)[0], 'depth', null);
      put(file.materials?.[0], 'width', 'x');
    });
    expect(found?.entries).toHaveLength(2);
  });

  it.each<[string, (file: Json) => void]>([
    ['the corners', (file) => put(file.room?.corners?.[0], 'x', 'far')],
    ['the name of the class', (file) => put(file, 'name', 3)],
    ['a whole list', (file) => put(file.room, 'openings', 5)],
    ['a thing that is none', (file) => put(file.materials, '1', 'Rods')],
    ['a thing without an id', (file) => put(file.materials?.[1], 'id', null)],
    ['an id twice, with something else wrong', (file) => Object.assign(file.materials?.[1] ?? {}, { id: 'm1', width: 'x' })],
  ])('%s: nothing is offered that would lose it', (_, spoil) => {
    expect(torn(spoil)).toBeNull();
  });
});

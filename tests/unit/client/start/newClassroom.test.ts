import { expect, it } from 'vitest';
import { newClassroom } from '#client/start/newClassroom.ts';
import { isNotDrawn } from '#client/states/notDrawn.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroomFile, writeClassroomFile } from '#model/schema/readFile.ts';

const typed = {
  name: 'Maple room',
  units: 'imperial',
  length: 8400,
  width: 7600,
  groups: [{ name: 'three', fromMonths: 36, toMonths: 48, count: 8 }],
  ruleSet: 'england',
} as const;

it('makes a room of the typed size with its children and rules', () => {
  const classroom = newClassroom(typed);
  expect(buildScene(classroom).room).toMatchObject({ isSound: true, area: 63.84 });
  expect(classroom).toMatchObject({ name: 'Maple room', ruleSet: 'england', current: 'a1', display: { units: 'imperial' } });
  expect(classroom.children.groups).toMatchObject([{ fromMonths: 36, toMonths: 48, count: 8 }]);
});

it('can be saved and opened again without a difference', () => {
  const classroom = newClassroom(typed);
  const read = readClassroomFile(writeClassroomFile(classroom));
  expect(read.ok && read.classroom).toEqual(classroom);
});

it('refuses a size that no file may hold', () => {
  expect(() => newClassroom({ ...typed, length: 1e9 })).toThrow(/room\.corners/);
});

it('stands in as a plain rectangle while its walls are drawn later', () => {
  expect(isNotDrawn(newClassroom(typed).room)).toBe(false);
  const { room } = newClassroom({ ...typed, isDrawnLater: true });
  expect(isNotDrawn(room)).toBe(true);
  expect(isNotDrawn({ ...room, corners: newClassroom(typed).room.corners })).toBe(false);
});

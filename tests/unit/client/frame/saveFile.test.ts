import { expect, it } from 'vitest';
import { fileNameOf } from '#client/frame/saveFile.ts';

it.each([
  ['Juniper room', 'juniper-room.lowshelf.json'],
  ['  Räume / 2. Stock  ', 'räume-2-stock.lowshelf.json'],
  ['教室', '教室.lowshelf.json'],
  ['../../x', 'x.lowshelf.json'],
  ['', 'classroom.lowshelf.json'],
])('the file of "%s" is called %s', (name, file) => {
  expect(fileNameOf(name)).toBe(file);
});

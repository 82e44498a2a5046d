import { describe, expect, it } from 'vitest';
import { sayFileProblem } from '#client/start/sayFileProblem.ts';
import { readClassroomFile, writeClassroomFile } from '#model/schema/readFile.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

/** What the first problem of a file with this text is called. */
function told(text: string) {
  const read = readClassroomFile(text);
  const problem = read.ok ? undefined : read.problems[0];
  return problem && sayFileProblem(problem);
}

describe('a file that cannot be opened, in the words of a guide', () => {
  it.each(['Dear parents,', '{"format": "lowshelf', '[1, 2]', '42', '{"format":"something else"}', '{}'])(
    '%s is not a classroom file; the technical words stand behind',
    (text) => {
      expect(told(text)?.text).toBe('This is not a classroom file. Choose a file that "Save a file" made on a classroom\'s sheet.');
      expect(told(text)?.technical).toMatch(/^At .+: found .+, expected .+\.$/);
    },
  );

  it('says in its own words that a file is empty, too large or unreadable', () => {
    expect(told(' \n')?.text).toMatch(/^This file is empty\./);
    expect(sayFileProblem({ path: '(file)', found: '70.0 MB', expected: 'at most 20 MB' })?.text).toMatch(/too large .+ 70\.0 MB/);
    expect(sayFileProblem({ path: '(file)', found: 'a file that the browser could not read', expected: 'NotFound' })?.text).toContain(
      'choose it again',
    );
  });

  it('leaves a fault inside a classroom file at its place', () => {
    const file = writeClassroomFile(plainRoom()).replace('"version": 1', '"version": "one"');
    expect(readClassroomFile(file).ok).toBe(false);
    expect(told(file)).toBeNull();
  });
});

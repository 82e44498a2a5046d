import { expect, it } from 'vitest';
import { sayLeft } from '#client/checks/sayLeft.ts';

it.each([
  [{ by: 'Ida Brook', at: '2026-11-25T09:34:00' }, 'Left by Ida Brook on 25 November 2026 at 09:34.'],
  [{ by: ' IB ', at: '2026-11-25' }, 'Left by IB on 25 November 2026.'],
  [{ by: '', at: '2026-11-25' }, 'Left by somebody who gave no name on 25 November 2026.'],
  [{ by: 'IB', at: '' }, 'Left by IB; when is not known.'],
  [{ by: 'IB', at: 'last week' }, 'Left by IB on last week.'],
])('who left it and when: %o', (entry, words) => {
  expect(sayLeft(entry)).toBe(words);
});

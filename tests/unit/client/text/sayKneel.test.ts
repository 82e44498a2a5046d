import { expect, it } from 'vitest';
import { sayLook, sayPicture } from '#client/text/sayKneel.ts';
import type { TrayLook } from '#model/measures/kneelView.ts';

const one = (change: Partial<TrayLook>): TrayLook =>
  ({
    look: 'seen',
    spot: { x: 0, y: 100, z: 680 },
    from: { nearest: 100, farthest: 230 },
    topOverEye: null,
    floor: 500,
    before: null,
    ...change,
  }) as TrayLook;

it.each([
  [{}, 'she sees into it'],
  [{ topOverEye: 800 }, 'she sees its front, not into it: its top, at 0.80 m, is above her eyes'],
  [{ look: 'too flat' }, 'too flat: she looks across it; she sees into it from 0.23 m or nearer'],
  [{ look: 'too flat', topOverEye: 800 }, 'she sees its front, not into it: its top, at 0.80 m, is above her eyes'],
  [{ look: 'too flat', from: null }, 'too flat: she looks across it, however near she comes'],
  [{ look: 'no floor' }, 'she cannot stand so far back: 0.50 m of floor is free before it; she sees into it from 0.10 m to 0.23 m'],
  [
    { look: 'no floor', topOverEye: 800 },
    'she cannot stand so far back: 0.50 m of floor is free before it; she sees its front from 0.10 m to 0.23 m',
  ],
] as const)('%o is said as "%s"', (change, words) => {
  expect(sayLook(one(change), 'metric')).toBe(words);
});

it('counts as seen into only what is lower than her eyes', () => {
  expect(sayPicture([one({}), one({ topOverEye: 800 }), one({ look: 'too flat' })], 900, 'metric')).toBe(
    'From 0.90 m before the shelf she sees into 1 of 3 things.',
  );
});

import { describe, expect, it } from 'vitest';
import { comparedOf } from '#client/places/comparedOf.ts';
import { changedView, firstView } from '#client/session/view.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { furnished } from '../../../support/furnished.ts';

const set = (id: string, byArea: number | null): FloorPlaces => ({ rules: { id }, byArea }) as FloorPlaces;
const sets = [set('ours', 24), set('same', 24), set('wide', 30), set('strict', 19), set('silent', null)];
const idOf = (chosen: string | null, of = sets) => comparedOf(of, chosen)?.rules.id;

describe('the rule that the one in force is compared with', () => {
  it('is the chosen one, at first the strictest that says something different', () => {
    expect(idOf('wide')).toBe('wide');
    expect(idOf(null)).toBe('strict');
    expect(idOf('gone')).toBe('strict');
    expect(idOf('ours')).toBe('strict');
    expect(idOf(null, [set('ours', 24), set('same', 24)])).toBe('same');
    expect(idOf(null, [set('ours', 24)])).toBeUndefined();
  });

  it('stays chosen when another arrangement or another sheet is shown', () => {
    const classroom = furnished();
    const chosen = changedView(classroom, firstView(classroom), { sheet: 'places', compared: 'wide' });
    const other = changedView(classroom, chosen, { arrangement: 'a2', chosen: null, finding: null, preview: null });
    expect(other).toMatchObject({ arrangement: 'a2', compared: 'wide' });
    expect(changedView(classroom, changedView(classroom, other, { sheet: 'room' }), { sheet: 'places' }).compared).toBe('wide');
  });
});

import { describe, expect, it } from 'vitest';
import { sayFigures } from '#client/checks/sayFigures.ts';
import { shortMessage } from '#client/checks/shortMessage.ts';
import { mm } from '#model/units/quantity.ts';

describe('the figures beside a finding', () => {
  it('are measured and needed, to whole mm where they nearly meet', () => {
    expect(sayFigures(mm(600), mm(711), 'metric')).toEqual({ measured: '0.60 m', needed: '0.711 m needed' });
    expect(sayFigures(mm(705), mm(711), 'metric')?.measured).toBe('0.705 m');
  });

  it('say what is lacking where the measure falls below nothing', () => {
    expect(sayFigures(mm(-80), mm(0), 'metric')).toEqual({ measured: '0.08 m too little', needed: null });
    expect(sayFigures(mm(-80), mm(20), 'metric')).toEqual({ measured: '0.10 m too little', needed: null });
  });

  it('are left out where nothing was measured or nothing is needed', () => {
    expect(sayFigures(undefined, mm(711), 'metric')).toBeNull();
    expect(sayFigures(mm(600), undefined, 'metric')).toEqual({ measured: '0.60 m', needed: null });
    expect(sayFigures(mm(600), { value: 4, unit: 'adults' }, 'metric')).toEqual({ measured: '0.60 m', needed: '4 adults needed' });
  });

  it.each([
    ['materials', 1, 0, '1 to move', null],
    ['places', 19, 24, '19 places', '24 needed'],
    ['places', 1, 2, '1 place', '2 needed'],
    ['places', 28, 24, '28 places', 'at most 24'],
    ['mats', 0, 6, 'no mat', '6 needed'],
    ['children', 16, 24, 'for 16 children', '24 needed'],
    ['children', 24, 20, '24 children', 'at most 20'],
    ['share', 0.6, 1, '60 % of it', 'all of it needed'],
    ['m2', 1.2, 0, '1.20 m² too much', null],
    ['mm', 50, 0, '0.05 m too much', null],
  ] as const)('are read without a key: %s %d against %d', (unit, value, needed, saysMeasured, saysNeeded) => {
    expect(sayFigures({ value, unit }, { value: needed, unit }, 'metric')).toEqual({ measured: saysMeasured, needed: saysNeeded });
  });
});

describe('a message beside its figures', () => {
  const figures = { measured: '0.60 m', needed: '0.711 m needed' };

  it('does not repeat them', () => {
    expect(
      shortMessage(
        'The way from hall to Reading is 0.60 m wide at its narrowest, between the cupboard and table 1; 0.711 m is needed.',
        figures,
      ),
    ).toBe('The way from hall to Reading is too narrow between the cupboard and table 1.');
    expect(shortMessage('It is 0.60 m wide between table 5 and the wall, for 2.18 m; 0.711 m is needed on the way to hall.', figures)).toBe(
      'Too narrow between table 5 and the wall, for 2.18 m on the way to hall.',
    );
    expect(
      shortMessage(
        'It is 0.60 m wide by the sink, for 1.20 m. Every front is reached another way, so it holds nobody up; somebody who needs 0.711 m goes round.',
        figures,
      ),
    ).toBe(
      'Narrow by the sink, for 1.20 m. Every front is reached another way, so it holds nobody up; somebody who needs 0.711 m goes round.',
    );
    expect(shortMessage('The hall door is 0.60 m clear; 0.711 m is needed.', figures)).toBe('The hall door is too narrow.');
  });

  it('keeps every word where the figures are others, or stand nowhere else', () => {
    const message = 'The way from hall to Reading is 0.55 m wide at its narrowest, by the sink; 0.80 m is needed.';
    expect(shortMessage(message, figures)).toBe(message);
    expect(shortMessage(message, { measured: '0.55 m', needed: null })).toBe(message);
    expect(shortMessage(message, null)).toBe(message);
  });
});

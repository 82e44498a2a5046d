import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { Gauge } from '#client/checks/Gauge.tsx';

const drawn = (measured: number, needed: number): string =>
  renderToStaticMarkup(<Gauge measured={measured} needed={needed} severity="should" label="said" />);

it('draws what is measured against what is needed, and nothing where nothing is needed', () => {
  expect(drawn(700, 915)).toContain('aria-label="said"');
  expect(drawn(0, 4)).toContain('aria-label="said"');
  expect(drawn(1, 0)).toBe('');
  expect(drawn(2, -3)).toBe('');
  expect(drawn(Number.NaN, 4)).toBe('');
});

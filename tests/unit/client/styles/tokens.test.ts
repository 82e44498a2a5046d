import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { colours } from '#client/styles/tokens.ts';

const css = readFileSync(resolve(import.meta.dirname, '../../../../client/styles/tokens.css'), 'utf8');
const inCss = (name: string): string | undefined => new RegExp(`--${name}:\\s*(#[0-9a-f]{6})`, 'i').exec(css)?.[1]?.toUpperCase();
const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Relative luminance and contrast as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative luminance", "contrast ratio"). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(p: string, q: string): number {
  const [light, dark] = [luminance(p), luminance(q)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

describe('the tokens of the sheet', () => {
  it.each(Object.entries(colours))('%s is the same on canvas and page', (name, value) => {
    expect(inCss(kebab(name))).toBe(value.toUpperCase());
  });

  it.each(['ink', 'wall', 'blue', 'must', 'note', 'pencilText', 'shouldText'] as const)(
    '%s meets AA as text (4.5:1) on paper, leaf and wash',
    (name) => {
      for (const ground of [colours.paper, colours.leaf, colours.wash]) expect(contrast(colours[name], ground)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('pencil and should do not, so they are for lines only', () => {
    expect(contrast(colours.pencil, colours.paper)).toBeLessThan(4.5);
    expect(contrast(colours.should, colours.paper)).toBeLessThan(4.5);
  });
});

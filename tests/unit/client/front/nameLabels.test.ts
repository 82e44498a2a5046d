import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontView } from '#client/front/frontView.ts';
import { type Named, nameLabels, wholeName } from '#client/front/nameLabels.ts';
import { freeBesideNames, linesBelow } from '#client/front/nameRoom.ts';
import { layoutOf, shelfRoom } from './shelf.ts';

/** Six px a letter. */
const measure = (text: string): number => text.length * 6;
const tray = (name: string, middle: number, lines = 2, aside = ''): Named => ({ id: name, name, middle, linesAt: () => lines, aside });
const written = (trays: Named[], width: number, names = trays.map(({ name }) => name)) =>
  Object.fromEntries(nameLabels(trays, names, width, measure).map(({ id, lines }) => [id, lines.join('/')]));

describe('names below a board', () => {
  it('are whole where there is room, one beside the other or in two lines', () => {
    expect(written([tray('Pouring water', 60), tray('Folding cloths', 200)], 300)).toEqual({
      'Pouring water': 'Pouring water',
      'Folding cloths': 'Folding cloths',
    });
    expect(written([tray('Pouring water', 40), tray('Folding cloths', 90)], 130)).toEqual({
      'Pouring water': 'Pouring/water',
      'Folding cloths': 'Folding/cloths',
    });
  });

  it('are broken by the widths they are asked with, whoever asked before', () => {
    const broken = (by: (text: string) => number) =>
      nameLabels([tray('Pouring water', 40), tray('Folding cloths', 90)], ['Pouring water', 'Folding cloths'], 130, by).map(
        ({ lines }) => lines.length,
      );
    expect(broken(measure)).toEqual([2, 2]);
    expect(broken((text) => text.length)).toEqual([1, 1]);
    expect(broken(measure)).toEqual([2, 2]);
  });

  it('move aside for one another as long as each still hangs below its tray', () => {
    const labels = nameLabels(
      [tray('Two-term cube', 100, 1), tray('Three-term cube', 120, 1)],
      ['Two-term cube', 'Three-term cube'],
      240,
      measure,
    );
    expect(labels.map(({ x, width }) => [x, x + width])).toEqual([
      [22, 100],
      [105, 195],
    ]);
  });

  it('say what tells one from its family where others of it stand on this side', () => {
    const frames = ['Dressing frame: zip', 'Dressing frame: buckles'];
    expect(written([tray(frames[0] as string, 60), tray(frames[1] as string, 200)], 300)).toEqual({
      'Dressing frame: zip': 'Zip',
      'Dressing frame: buckles': 'Buckles',
    });
    expect(written([tray('Dressing frame: zip', 60)], 300)).toEqual({ 'Dressing frame: zip': 'Dressing frame: zip' });
  });

  it('end after whole words, never in the middle of one, and only where nothing else begins like that', () => {
    expect(written([tray('Moving objects with tongs or tweezers', 60, 1)], 120)).toEqual({
      'Moving objects with tongs or tweezers': 'Moving objects…',
    });
    const sandpaper = ['Sandpaper tablets', 'Sandpaper cards'];
    expect(written([tray(sandpaper[0] as string, 40, 1)], 80, sandpaper)).toEqual({});
    expect(written([tray(sandpaper[0] as string, 40, 1)], 80, ['Sandpaper tablets', 'Rods'])).toEqual({
      'Sandpaper tablets': 'Sandpaper…',
    });
  });

  it('are each under their own tray on a narrow board: one of a family by the first words of what it is', () => {
    const kinds = ['shoe buttons with hook', 'boned cloth laced', 'cloth laced with round cord', 'broad ribbon bows'];
    const names = kinds.map((kind) => `Dressing frame: ${kind}`);
    // As on a phone: four trays 60 px apart, two lines under each.
    const labels = nameLabels(
      names.map((name, i) => tray(name, 40 + 60 * i)),
      names,
      275,
      (text) => text.length * 5.7,
    );
    expect(labels.map(({ lines }) => lines.join(' '))).toEqual([
      'Shoe buttons with hook',
      'Boned cloth…',
      'Cloth laced with round cord',
      'Broad ribbon bows',
    ]);
  });

  it('do not stand under another tray that has none, as long as a shorter one does', () => {
    // Nothing tells the middle one by its first words, and whole it has no room.
    const names = ['Pouring grain from jugs', 'Sandpaper', 'Sandpaper tablets', 'Folding'];
    const trays = [tray('Pouring grain from jugs', 60, 1), tray('Sandpaper tablets', 110, 0), tray('Folding', 190, 1)];
    const [first, last] = nameLabels(trays, names, 240, measure);
    expect(first?.lines).toEqual(['Pouring grain…']);
    expect((first?.x ?? 0) + (first?.width ?? 0)).toBeLessThan(110);
    expect(last?.lines).toEqual(['Folding']);
    // Rather than none at all it does.
    expect(written([tray('Pouring', 60, 1), tray('Sandpaper', 70, 0)], 240)).toEqual({ Pouring: 'Pouring' });
  });

  it('are left out where there is no line for them, and say where the tray belongs only with a line to spare', () => {
    expect(written([tray('Dusting', 60, 0)], 120)).toEqual({});
    expect(written([tray('Dusting', 60, 2, 'to shelf 6')], 120)).toEqual({ Dusting: 'Dusting/to shelf 6' });
    expect(written([tray('Dusting', 60, 1, 'to shelf 6')], 120)).toEqual({ Dusting: 'Dusting' });
  });

  it('never lie over one another, nor beside their tray, nor outside the shelf, nor on what stands below', () => {
    const words = fc.array(fc.stringMatching(/^[A-Za-z]{1,12}$/), { minLength: 1, maxLength: 5 });
    const things = fc.array(fc.record({ words, middle: fc.integer({ min: 5, max: 295 }), lines: fc.integer({ min: 0, max: 3 }) }), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(things, fc.integer({ min: 0, max: 300 }), (list, highAt) => {
        const trays = list.map((one, i): Named => {
          const name = `${one.words.join(' ')} ${i}`;
          // Something high stands below one place of the board: only one line goes there.
          return {
            id: String(i),
            name,
            middle: one.middle,
            aside: '',
            linesAt: (from, to) => (from <= highAt && highAt <= to ? Math.min(1, one.lines) : one.lines),
          };
        });
        const labels = nameLabels(
          trays,
          trays.map(({ name }) => name),
          300,
          measure,
        );
        for (const [i, { id, x, width, lines }] of labels.entries()) {
          const { middle, linesAt } = trays[Number(id)] as Named;
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(300);
          expect(x - 1e-6).toBeLessThanOrEqual(middle);
          expect(x + width + 1e-6).toBeGreaterThanOrEqual(middle);
          expect(lines.length).toBeLessThanOrEqual(linesAt(x, x + width));
          const next = labels[i + 1];
          if (next) expect(x + width).toBeLessThan(next.x);
        }
      }),
    );
  });

  it('are written whole for the chosen tray, in as few lines as its width lets', () => {
    expect(wholeName('Moving objects with tongs or tweezers', 150, measure)).toEqual({
      lines: ['Moving objects with', 'tongs or tweezers'],
      width: 114,
    });
    expect(wholeName('Multiplicationtablets', 20, measure).lines).toEqual(['Multiplicationtablets']);
  });
});

describe('a name that is written whole', () => {
  it('leaves its neighbours a shorter name beside it', () => {
    const one = tray('Solid insets: cylinders by diameter', 60, 3);
    const two = tray('Solid insets: cylinders by height', 180, 3);
    const whole = wholeName(two.name, 170, measure);
    const labels = nameLabels([one, { ...two, linesAt: () => 0, whole }], [one.name, two.name], 330, measure);
    expect(labels.map(({ id }) => id)).toEqual([one.name, two.name]);
    const [left, right] = labels;
    expect(right?.lines).toEqual(whole.lines);
    expect((left?.x ?? 0) + (left?.width ?? 0)).toBeLessThanOrEqual(right?.x ?? 0);
  });

  it('stays when there is room for it alone', () => {
    const labels = nameLabels(
      [tray('Cubes', 20, 1), { ...tray('Blocks in a box', 60, 1), whole: { lines: ['Blocks in a box'], width: 90 } }],
      ['Cubes', 'Blocks in a box'],
      110,
      measure,
    );
    expect(labels.map(({ id }) => id)).toEqual(['Blocks in a box']);
  });
});

describe('free room', () => {
  it('is written only where it leaves the names above a line', () => {
    const layout = layoutOf(
      shelfRoom([
        ['a', 'top', 0, 200],
        ['b', 'mid', 0, 200],
      ]),
    );
    const boards = (px: number) =>
      freeBesideNames(layout.boards, frontView({ width: 700, height: px, shelf: 1400, top: 900, isMirrored: false })).map(
        ({ free }) => free.length > 0,
      );
    expect(boards(500)).toEqual([false, true, true, true]);
    // 0.29 m between the boards are 24 px: one line, or the free room.
    expect(boards(140)).toEqual([false, true, false, false]);
  });
});

describe('lines of text below a board', () => {
  it('are as many as go between it and what stands below', () => {
    const { boards } = layoutOf(shelfRoom([]));
    const [top, low] = [boards[1], boards[3]] as const;
    if (!top || !low) throw new Error('the shelf has a top and a low board');
    const view = frontView({ width: 605, height: 300, shelf: 1400, top: 900, isMirrored: false });
    const along = { from: 100, to: 400 };
    expect(linesBelow(top, boards, [], along, view)).toBe(3);
    const standing = (height: number) => [{ from: 350, to: 600, surface: 350, height }];
    expect(linesBelow(top, boards, standing(200), along, view)).toBe(1);
    expect(linesBelow(top, boards, standing(270), along, view)).toBe(0);
    expect(linesBelow(top, boards, standing(270), { from: 100, to: 340 }, view)).toBe(3);
    // Under the lowest board there is only the ground: its names stand below the floor.
    expect(linesBelow(low, boards, standing(270), along, view)).toBe(2);
  });
});

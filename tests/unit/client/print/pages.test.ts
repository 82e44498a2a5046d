import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { LABEL, needsFirst } from '#client/print/labelPages.ts';
import { boundsOfMarks, type Mark } from '#client/print/marks.ts';
import { averageWidth } from '#client/print/measureOnPaper.ts';
import { pagesOf } from '#client/print/pages.ts';
import type { PrintPage } from '#client/print/pageTypes.ts';
import { paperNames, sheetOf } from '#client/print/paper.ts';
import { keepPrintChoice, type PrintChoice, readPrintChoice } from '#client/print/printChoice.ts';
import { roomPages } from '#client/print/roomPages.ts';
import { titleColumn } from '#client/print/titleBlock.ts';
import { unseenMarks } from '#client/print/unseenMarks.ts';
import { analyse } from '#model/analysis/report.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { expectWithinMargins } from '#tests/support/withinMargins.ts';

const read = readClassroom(JSON.parse(readFileSync(resolve(import.meta.dirname, '../../../../client/demo/demo-room.json'), 'utf8')));
if (!read.ok) throw new Error('the demo can be read');
const demo = read.classroom;
const report = analyse(demo, { mats: null, tiers: ['live'] });

const nothing: PrintChoice = {
  paper: 'a4',
  isMove: false,
  isRoom: false,
  hasMarks: true,
  hasRemarks: true,
  hasUnseen: true,
  fronts: 'none',
  frontScale: 10,
  labels: 'none',
  isChecks: false,
};
const print = (classroom: Classroom, choice: Partial<PrintChoice>, withReport = true): PrintPage[] =>
  pagesOf({
    scene: buildScene(classroom),
    report: withReport ? report : null,
    choice: { ...nothing, ...choice },
    move: null,
    frontOf: null,
    measure: averageWidth,
    today: '2026-11-25',
  });

const textOf = (marks: readonly Mark[]): string => marks.flatMap((mark) => (mark.kind === 'words' ? mark.text : [])).join(' ');
const room = (width: number, depth: number): Classroom =>
  plainRoom({
    room: {
      corners: [
        { id: 'c1', x: 0, y: 0 },
        { id: 'c2', x: width, y: 0 },
        { id: 'c3', x: width, y: depth },
        { id: 'c4', x: 0, y: depth },
      ],
    },
  });
const shelf = (width: number, height: number): Classroom =>
  plainRoom({
    pieces: [
      {
        id: 's1',
        kind: 'shelf',
        name: 'Counting',
        x: 2000,
        y: 300,
        width,
        depth: 300,
        height,
        levels: [{ id: 'l1', surface: height - 300 }],
      },
    ],
  });

describe('the scale of the room sheet', () => {
  it.each([
    // design.md, "Print": a room to about 11 × 7.6 m fits A4 lying at 1:50.
    [10_900, 7_600, 'a4', 50, ''],
    [7_000, 11_000, 'a4', 50, ''],
    [14_000, 9_000, 'a4', 100, 'too large for 1:50 on A4; A3 takes it at 1:50'],
    [14_000, 9_000, 'a3', 50, ''],
    [14_000, 9_000, 'letter', 100, 'too large for 1:50 on US Letter; US Tabloid takes it at 1:50'],
    [60_000, 40_000, 'a3', 200, 'too large for 1:50 on A3'],
  ] as const)('a room of %s × %s mm on %s is at 1:%s', (width, depth, paper, scale, note) => {
    const [page] = print(room(width, depth), { isRoom: true, paper }, false);
    expect(page).toMatchObject({ scale, note });
    expect(textOf(page?.marks ?? [])).toContain(`1:${scale}`);
  });

  it('draws the floor true to it', () => {
    const [page] = print(demo, { isRoom: true });
    // The demo room is 8.40 × 7.60 m over all.
    const floors = (page?.marks ?? []).filter((mark) => mark.kind === 'line' && mark.fill === 'white' && mark.points.length === 6);
    const boxes = floors.map((mark) => boundsOfMarks([mark], averageWidth));
    expect(boxes.some((box) => Math.abs(box.maxX - box.minX - 168) < 1e-9 && Math.abs(box.maxY - box.minY - 152) < 1e-9)).toBe(true);
  });

  it.each(['in-left', 'out-left'] as const)('keeps the name of a door within its wall, however long it is (%s)', (swing) => {
    const long = 'The way out to the covered walk and the kitchen garden behind the old greenhouse and the compost';
    const named = (name: string): Classroom =>
      plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 4000, y: 0 },
            { id: 'c3', x: 4000, y: 4000 },
            { id: 'c4', x: 0, y: 4000 },
          ],
          openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: 2950, width: 1000, clear: 950, swing, name }],
        },
      });
    const sheetAlone: Partial<PrintChoice> = { isRoom: true };
    const wordsOf = (name: string) => {
      const [page] = print(named(name), sheetAlone, false);
      const found = page?.marks.flatMap((mark) =>
        mark.kind === 'words' && mark.isItalic && name.startsWith(mark.text.replace('…', '')) ? [mark] : [],
      );
      return found?.[0];
    };
    const [short, cut] = [wordsOf('garden'), wordsOf(long)];
    expect(short?.text).toBe('garden');
    expect(cut?.text).toMatch(/^The way out .*…$/);
    // 1:50 on A4, as its title says: 4 m of wall are 80 mm.
    const half = averageWidth(cut?.text ?? '', 2.6, 400, true) / 2;
    expect(2 * half).toBeLessThanOrEqual(80);
    // The short one stands at its door, 3.45 m along; the long one reaches from end to end of the wall.
    const start = (short?.at.x ?? 0) - 3450 / 50;
    expect((cut?.at.x ?? 0) - half).toBeGreaterThanOrEqual(start - 3);
    expect((cut?.at.x ?? 0) + half).toBeLessThanOrEqual(start + 80 + 3);
  });

  it('does not shrink the room for a thing far outside, and says that it is not drawn', () => {
    const far = plainRoom({ pieces: [{ id: 't9', kind: 'table', name: 'table 9', x: 60_000, y: 0, width: 1000, depth: 500 }] });
    const pages = print(far, { isRoom: true }, false);
    expect(pages[0]?.scale).toBe(50);
    expect(pages.map(({ marks }) => textOf(marks)).join(' ')).toContain('not drawn: table 9');
  });
});

describe('what the drawing shows besides', () => {
  const remarks = [
    { id: 'n1', on: 't1', x: 0, y: 0, text: 'Ask for a lower table.', by: 'AO', done: false },
    { id: 'n2', on: null, x: 2000, y: 2500, text: 'Measured twice.', by: 'RT', done: true },
    { id: 'n3', on: null, x: 3000, y: 3500, text: 'The heater pipe comes out here.', by: 'RT', done: false },
  ];
  const noted: Classroom = { ...demo, notes: remarks };
  const textsOf = (pages: readonly PrintPage[]): string[] =>
    pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])));

  it('has the remarks that are open, with the numbers of the drawing and a list of them', () => {
    const texts = textsOf(print(noted, { isRoom: true, paper: 'a3' }));
    expect(texts).toContain('Remarks');
    expect(texts.join(' ')).toContain('Table T1: Ask for a lower table.');
    expect(texts.join(' ')).toContain('The heater pipe comes out here.');
    expect(texts.join(' ')).not.toContain('Measured twice.');
    expect(texts).toContain('a remark, in the list');
  });

  it('has none when they are left out, or when there are none', () => {
    expect(textsOf(print(noted, { isRoom: true, paper: 'a3', hasRemarks: false })).join(' ')).not.toMatch(/heater|a remark/);
    expect(textsOf(print({ ...demo, notes: [] }, { isRoom: true, paper: 'a3' }))).not.toContain('Remarks');
  });

  it('never writes a stand for mats as a mat, which lies on the floor', () => {
    const words = print(demo, { isRoom: true })[0]?.marks.flatMap((mark) => (mark.kind === 'words' ? mark.text : [])) ?? [];
    expect(words).not.toContain('mat');
    expect(words).not.toContain('mats');
    expect(words.filter((text) => text === 'stand' || text === 'mat stand').length).toBeGreaterThan(0);
  });

  it('says what the marks of the checks mean, where they are marked', () => {
    const legend = (hasMarks: boolean) =>
      textsOf(print(demo, { isRoom: true, paper: 'a3', hasMarks })).filter((text) => /^a check: /.test(text));
    expect(legend(true)).toEqual(['a check: must', 'a check: should']);
    expect(legend(false)).toEqual([]);
  });

  it('has the floor that no adult sees hatched, its holes bare, and says what the hatch means', () => {
    const square = (from: number, to: number) => [
      [from, from],
      [to, from],
      [to, to],
      [from, to],
    ];
    const sight = { hidden: [{ outline: square(2000, 4000), holes: [square(2500, 3500)] }] };
    const pages = (hasUnseen: boolean) =>
      pagesOf({
        scene: buildScene(demo),
        report: { ...report, measures: { ...report.measures, sight } },
        choice: { ...nothing, isRoom: true, paper: 'a3', hasUnseen, hasMarks: false },
        move: null,
        frontOf: null,
        measure: averageWidth,
        today: '2026-11-25',
      });
    const hatched = (all: readonly PrintPage[]) => all.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'strokes'));
    expect(textsOf(pages(true))).toContain('floor that no adult sees');
    expect(textsOf(pages(false))).not.toContain('floor that no adult sees');
    expect(hatched(pages(true)).length).toBe(hatched(pages(false)).length + 2);
    // 2 m at 1:50 are 40 mm: slanted lines of a square of 40 mm with a bare square of 20 mm in its middle.
    const pen = { at: (p: { x: number; y: number }) => ({ x: p.x / 50, y: p.y / 50 }), scale: 50, measure: averageWidth } as const;
    const points = (ring: number[][]) => ring.map(([x = 0, y = 0]) => ({ x, y }));
    const patches = [{ outline: points(square(2000, 4000)), holes: [points(square(2500, 3500))] }];
    const [patch] = unseenMarks({ ...pen, units: 'metric', isRightToLeft: false }, patches);
    if (patch?.kind !== 'strokes') throw new Error('the floor is hatched');
    const run = patch.segments.reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);
    expect(Math.abs(run * 2.8 - (40 * 40 - 20 * 20))).toBeLessThan(60);
  });
});

describe('the block of titles', () => {
  const facts = {
    className: 'Class',
    facts: 'ages 3 to 6',
    arrangement: 'As it stands',
    day: '25 November 2026',
    units: 'metric',
  } as const;

  it.each([
    [14_000, 'a4', 'too large for 1:50 on A4; A3 takes it at 1:50', '1 m is 10 mm'],
    [60_000, 'a3', 'too large for 1:50 on A3', '10 m is 50 mm'],
  ] as const)('says what to hold a ruler to also where it says why the scale is smaller', (width, paper, note, ruler) => {
    const [page] = print(room(width, 9000), { isRoom: true, paper }, false);
    const text = textOf(page?.marks ?? []).replace(/\s+/g, ' ');
    expect(text).toContain(`Print at 100 %: ${ruler}`);
    expect(text).toContain(note);
  });

  it.each([
    ['a4', 8_400, 7_600],
    ['a3', 8_400, 7_600],
    ['letter', 8_400, 7_600],
    ['tabloid', 12_000, 9_000],
    ['a4', 30_000, 20_000],
  ] as const)('says on %s where north is, clear of the scale, of a plan of %i by %i mm and of no front', (paper, width, depth) => {
    const [plan] = print(room(width, depth), { isRoom: true, paper }, false);
    const marks = plan?.marks ?? [];
    const north = marks.findLastIndex((mark) => mark.kind === 'words' && mark.text === 'N');
    const arrow = boundsOfMarks(marks.slice(north - 3, north + 1), averageWidth);
    expect(arrow.maxY - arrow.minY).toBeGreaterThan(7);
    const others = marks.filter((mark, i) => mark.kind === 'words' && mark.text !== '' && (i < north - 3 || i > north));
    for (const other of others) {
      const { minX, minY, maxX, maxY } = boundsOfMarks([other], averageWidth);
      const isApart = minX >= arrow.maxX || maxX <= arrow.minX || minY >= arrow.maxY || maxY <= arrow.minY;
      expect(isApart, JSON.stringify(other)).toBe(true);
    }
    const fronts = print(demo, { fronts: 'all', paper });
    expect(fronts.length).toBeGreaterThan(0);
    for (const page of fronts) expect(page.marks.some((mark) => mark.kind === 'words' && mark.text === 'N')).toBe(false);
  });

  it('is never written over by the list beside the plan, however long it is', () => {
    for (let width = 8_600; width <= 11_400; width += 200) {
      for (const count of [24, 40, 48, 56, 64]) {
        const bare = room(width, 9_000);
        const pieces = Array.from({ length: count }, (_, i) => ({
          id: `p${i}`,
          kind: 'table' as const,
          name: `Table ${i + 1}`,
          x: 600 + (i % 8) * 900,
          y: 600 + Math.floor(i / 8) * 900,
          width: 500,
          depth: 500,
        }));
        const classroom = plainRoom({ room: bare.room, pieces });
        const scene = buildScene(classroom);
        const input = { scene, report: null, move: null, frontOf: null, measure: averageWidth, today: '2026-11-25' };
        for (const paper of ['a3', 'tabloid'] as const) {
          const [draft] = roomPages({ ...input, choice: { ...nothing, isRoom: true, paper } }, facts);
          if (draft?.title.form !== 'column') continue;
          const { box } = draft.title;
          const of = { what: 'Room', scale: draft.scale, scaleNote: draft.scaleNote, isPlan: true, number: 1, count: 1 };
          const top = box.y + box.height - titleColumn(box, facts, of, averageWidth).height;
          const over = draft.marks.filter((mark) => {
            const { maxX, maxY } = boundsOfMarks([mark], averageWidth);
            return mark.kind === 'words' && maxX > box.x + 0.5 && maxY > top + 0.5;
          });
          expect(over, `${width} mm, ${count} tables, ${paper}`).toEqual([]);
        }
      }
    }
  });
});

describe('the scale of fronts', () => {
  it.each([
    [1800, 700, 'a4', 10, 10, true],
    [1800, 700, 'a4', 20, 20, false],
    [1200, 1800, 'a4', 10, 10, false],
    [3500, 900, 'a4', 10, 20, true],
    [3300, 900, 'a3', 10, 10, true],
  ] as const)('a shelf of %s × %s mm on %s, wanted at 1:%s, is at 1:%s', (width, height, paper, frontScale, scale, isLying) => {
    const [page] = print(shelf(width, height), { fronts: 'all', paper, frontScale }, false);
    expect(page?.scale).toBe(scale);
    expect(page?.sheet.isLying).toBe(isLying);
    expect(textOf(page?.marks ?? [])).toContain('Shelf 1, front');
  });
  it('both sides of a double one are printed', () => {
    const classroom = shelf(1600, 800);
    const pieces = classroom.arrangements[0]?.pieces.map((piece) => ({ ...piece, sides: ['front', 'back'] as const })) ?? [];
    const double = { ...classroom, arrangements: [{ ...classroom.arrangements[0], pieces }] } as unknown as Classroom;
    const text = print(double, { fronts: 'all' }, false)
      .map(({ marks }) => textOf(marks))
      .join(' ');
    expect(text).toContain('Shelf 1, front · Counting');
    expect(text).toContain('Shelf 1, back · Counting');
  });
});

describe('label strips', () => {
  const pages = print(demo, { labels: 'all' });
  it('have one label for each tray on a shelf', () => {
    const scene = buildScene(demo);
    const trays = scene.sides.flatMap(({ boards }) => boards.flatMap(({ trays }) => trays));
    const cut = pages.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'line' && mark.isClosed && mark.dash.length > 0));
    expect(cut.length).toBe(trays.length);
    for (const mark of cut) {
      const { minX, maxX, minY, maxY } = boundsOfMarks([{ ...mark, weight: 0 } as Mark], averageWidth);
      expect([LABEL.wide, LABEL.narrow].some((wide) => Math.abs(maxX - minX - wide) < 1e-9)).toBe(true);
      expect(maxY - minY).toBeCloseTo(25, 9);
    }
  });
  it('name what a child needs first by its name, of the catalogue where the class does not have it', () => {
    const scene = buildScene(demo);
    const material = demo.materials.find(({ id }) => id === 'se-colour-memory');
    if (!material) throw new Error('the demo has it');
    expect(needsFirst(scene, material)).toEqual([demo.materials.find(({ id }) => id === 'se-colour-3')?.name]);
    expect(needsFirst(scene, { ...material, after: ['pl-move-seat', 'nobody-knows-it'] })).toEqual([
      'Moving a chair without noise',
      'nobody-knows-it',
    ]);
  });
});

describe.each(paperNames)('on %s', (paper) => {
  const everything = { paper, isRoom: true, fronts: 'all', labels: 'all', isChecks: true } as const;
  it.each(['metric', 'imperial'] as const)('nothing lies outside the margins, in %s, either way of reading', (units) => {
    for (const readingDirection of ['ltr', 'rtl'] as const) {
      const pages = print({ ...demo, display: { ...demo.display, units, readingDirection } }, everything);
      for (const page of pages) expectWithinMargins(page);
      // 1 of n, 2 of n, 3 of n, as they lie in the tray of the printer.
      expect(pages.length).toBeGreaterThan(3);
      const numbers = pages.map(({ marks }) =>
        marks.flatMap((mark) => (mark.kind === 'words' ? (/^(?:Sheet )?(\d+) of (\d+)$/.exec(mark.text)?.slice(1).map(Number) ?? []) : [])),
      );
      expect(numbers).toEqual(pages.map((_, i) => [i + 1, pages.length]));
    }
  });
  it('has the sizes of its standard', () => {
    // ISO 216: A4 210 × 297, A3 297 × 420. ANSI/ASME Y14.1: A 8.5 × 11 in, B 11 × 17 in.
    const sizes = { a4: [210, 297], a3: [297, 420], letter: [8.5 * 25.4, 11 * 25.4], tabloid: [11 * 25.4, 17 * 25.4] } as const;
    const [short, long] = sizes[paper];
    expect(sheetOf(paper, false).width).toBeCloseTo(short, 6);
    expect(sheetOf(paper, false).height).toBeCloseTo(long, 6);
    expect(sheetOf(paper, true).width).toBeCloseTo(long, 6);
  });
});

describe('the list of checks', () => {
  const isSaid = (pages: readonly PrintPage[]): string[] => pages.map(({ marks }) => textOf(marks));
  it('never opens a page for what stands at its foot or for a heading, however long it is', () => {
    // As many lines of what was left as fill one page after the other, line by line.
    const left = Array.from({ length: 60 }, (_, i) => ({ key: `k${i}`, reason: `reason ${i}`, by: '', at: '' }));
    for (let count = 0; count <= 60; count++) {
      const pages = print({ ...demo, left: left.slice(0, count) }, { isChecks: true });
      const last = pages.at(-1)?.marks ?? [];
      const above = last.filter((mark) => mark.kind === 'words' && mark.at.y < 255 && !mark.isTitle);
      expect(above.length, `${count} left: the last of ${pages.length} pages`).toBeGreaterThan(0);
      for (const text of isSaid(pages)) expect(text.match(/no proof that furniture/g) ?? []).toHaveLength(1);
    }
  });
  it('takes closer gaps where they save a page of a few lines', () => {
    // Entries of what was left, one more each time: the first further page that is opened holds more than a line or two.
    const left = Array.from({ length: 60 }, (_, i) => ({ key: `k${i}`, reason: `reason ${i}`, by: '', at: '' }));
    const counts = left.map((_, i) => print({ ...demo, left: left.slice(0, i) }, { isChecks: true }).length);
    const firstLonger = counts.findIndex((count) => count > (counts[0] ?? 0));
    const last = print({ ...demo, left: left.slice(0, firstLonger) }, { isChecks: true }).at(-1)?.marks ?? [];
    const lines = last.filter((mark) => mark.kind === 'words' && mark.at.y < 255);
    expect(firstLonger).toBeGreaterThan(0);
    expect(lines.length).toBeGreaterThan(3);
  });
  it('says who decides, on its first page', () => {
    expect(isSaid(print(demo, { isChecks: true }))[0]).toContain('Your local authority decides.');
  });
});

describe('a shelf about which a check could not tell', () => {
  it('is listed as not known, never as fine', () => {
    const lone: Classroom = plainRoom({
      pieces: [{ id: 's1', kind: 'shelf', name: 'Counting', x: 3000, y: 2500, width: 900, depth: 300, height: 900, anchored: null }],
    });
    const pages = pagesOf({
      scene: buildScene(lone),
      report: analyse(lone, { mats: null }),
      choice: { ...nothing, isRoom: true },
      move: null,
      frontOf: null,
      measure: averageWidth,
      today: '2026-11-25',
    });
    const said = pages.map(({ marks }) => textOf(marks)).join(' ');
    expect(said).toContain('not known');
    expect(said).not.toContain('fine');
  });
});

describe('what is left out or not known', () => {
  it('prints nothing when nothing is chosen', () => expect(print(demo, {})).toEqual([]));
  it('says that checks are still worked out', () => {
    expect(textOf(print(demo, { isChecks: true }, false)[0]?.marks ?? [])).toContain('still being worked out');
  });
});

describe('the choice', () => {
  const kept = new Map<string, string>();
  beforeEach(() => {
    kept.clear();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => kept.set(key, text),
    });
  });
  it('is as at first on a device that has none: the paper of the units', () => {
    expect(readPrintChoice('metric', []).paper).toBe('a4');
    expect(readPrintChoice('imperial', []).paper).toBe('letter');
  });
  it('comes back as it was', () => {
    const choice: PrintChoice = { ...nothing, paper: 'tabloid', fronts: 's1', labels: 'all', frontScale: 20, isChecks: true };
    keepPrintChoice(choice);
    expect(readPrintChoice('metric', ['s1'])).toEqual(choice);
  });
  it('takes all shelves where the one that was chosen is not here', () => {
    keepPrintChoice({ ...nothing, fronts: 's1' });
    expect(readPrintChoice('metric', ['s2']).fronts).toBe('all');
  });
  it.each(['{', 'null', '[]', '{"paper":"A0","fronts":7,"isRoom":"yes"}'])('reads %s as a device that has none', (text) => {
    kept.set('lowshelf.print', text);
    expect(readPrintChoice('metric', [])).toMatchObject({ paper: 'a4', isRoom: true, fronts: 'none' });
  });
});

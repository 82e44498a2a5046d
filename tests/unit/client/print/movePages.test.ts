import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dayOf } from '#client/moveDay/dayOf.ts';
import { boundsOfMarks, type Mark } from '#client/print/marks.ts';
import { averageWidth } from '#client/print/measureOnPaper.ts';
import { pagesOf } from '#client/print/pages.ts';
import type { PrintPage } from '#client/print/pageTypes.ts';
import { paperNames } from '#client/print/paper.ts';
import { onlyMove, readPrintChoice } from '#client/print/printChoice.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { expectWithinMargins } from '#tests/support/withinMargins.ts';

const read = readClassroom(JSON.parse(readFileSync(resolve(import.meta.dirname, '../../../../client/demo/demo-room.json'), 'utf8')));
if (!read.ok) throw new Error('the demo can be read');
const demo = read.classroom;
const [from, to] = demo.arrangements as [Classroom['arrangements'][0], Classroom['arrangements'][0]];
const day = dayOf(demo, from, to, demo.moveDay);
const choice = onlyMove(readPrintChoice('metric', []));
const print = (change: Partial<typeof choice> = {}, move: typeof day | null = day): PrintPage[] =>
  pagesOf({
    scene: buildScene(demo, to.id),
    report: null,
    choice: { ...choice, ...change },
    move,
    frontOf: null,
    measure: averageWidth,
    today: '2026-11-26',
  });
const texts = (marks: readonly Mark[]): string[] => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
const [plan, ...lists] = print();
const listed = lists.flatMap(({ marks }) => texts(marks));

describe('the day of the move on paper', () => {
  it('is a plan to scale and the lists, from one arrangement to the other, and nothing else', () => {
    expect(plan?.scale).toBe(50);
    expect(lists.length).toBeGreaterThan(0);
    for (const page of [plan, ...lists]) {
      expect(page?.what).toBe('Move day');
      expect(texts(page?.marks ?? []).join(' ')).toMatch(/From As it stands to Open middle/);
    }
  });

  it('has on the plan the number of every step that moves something, once, and an arrow for each that goes far', () => {
    const moved = day.steps.filter(({ step }) => step.unit !== null && (step.stands !== null || step.does === 'out'));
    const rings = (plan?.marks ?? []).flatMap((mark, i) => {
      const next = plan?.marks[i + 1];
      return mark.kind === 'round' && mark.radius === 2 && next?.kind === 'words' ? [next.text] : [];
    });
    expect(moved.length).toBeGreaterThan(5);
    expect([...rings].sort()).toEqual([...new Set(rings)].sort());
    for (const { number } of moved) expect(rings).toContain(String(number));
    const heads = (plan?.marks ?? []).filter((mark) => mark.kind === 'line' && mark.fill === 'black' && mark.points.length === 3);
    expect(heads.length).toBeGreaterThan(3);
    expect(heads.length).toBeLessThanOrEqual(rings.length);
  });

  it('names every step with a box to tick, and what it waits for', () => {
    for (const { number, after } of day.steps) {
      expect(listed).toContain(String(number));
      if (after.length === 1) expect(listed).toContain(`after ${after[0]}`);
    }
    const boxes = lists.flatMap(({ marks }) =>
      marks.filter((mark) => {
        if (mark.kind !== 'line' || !mark.isClosed) return false;
        const { minX, maxX } = boundsOfMarks([mark], averageWidth);
        return Math.abs(maxX - minX - 3.65) < 0.01;
      }),
    );
    // One for each step, two for each crate: packed, emptied.
    expect(boxes).toHaveLength(day.steps.length + 2 * day.plan.packed.crates.length);
  });

  it('ticks what is done already', () => {
    const first = day.steps[0]?.step.id ?? '';
    const done = dayOf(demo, from, to, { [`${from.id}>${to.id}`]: { [first]: { state: 'done', by: 'RT' } } });
    const strokes = (pages: readonly PrintPage[]): number =>
      pages.flatMap(({ marks }) => marks).filter((mark) => mark.kind === 'line' && !mark.isClosed && mark.points.length === 3).length;
    expect(strokes(print({}, done).slice(1)) - strokes(lists)).toBe(1);
  });

  it('lists every crate with its letter', () => {
    expect(day.plan.packed.crates.length).toBeGreaterThan(3);
    for (const { letter } of day.plan.packed.crates) expect(listed).toContain(letter);
  });

  it.each(paperNames)('on %s stays within the margins', (paper) => {
    for (const page of print({ paper })) expectWithinMargins(page);
  });

  it('has no page where there is nothing to move', () => expect(print({}, null)).toEqual([]));
});

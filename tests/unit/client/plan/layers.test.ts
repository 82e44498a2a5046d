import { beforeEach, describe, expect, it } from 'vitest';
import { labelsOf, layMarks } from '#client/plan/draw/drawFindings.ts';
import { drawLayer } from '#client/plan/layers.ts';
import { createPlanModel, type LayerName, type PlanModel } from '#client/plan/planModel.ts';
import { finding, report } from '../checks/finding.ts';
import { canvas } from './canvas.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;

/** The words that a canvas writes, in their order. */
function wordsOn(name: LayerName): string[] {
  const written: string[] = [];
  drawLayer(name, canvas({ fillText: (text: string) => written.push(text) }), model);
  return written;
}

beforeEach(() => {
  session = planSession({
    pieces: [
      { id: 'r1', name: 'circle rug', kind: 'rug', x: 3000, y: 2500, width: 2400, depth: 2000 },
      { id: 't1', kind: 'table', x: 5000, y: 1000, width: 1200, depth: 600 },
    ],
  });
  const mats = { count: 1, places: [{ x: 3000, y: 2500, width: 700, depth: 1100, rotation: 0 }] };
  session.setReport({ ...report([]), measures: { mats } });
  model = createPlanModel(session, () => {});
  model.size = { width: 600, height: 500 };
  model.view = { k: 0.08, x: 0, y: 0 };
});

describe('a rug', () => {
  it('lies under the mats that have their place on it, and under all that stands', () => {
    expect(wordsOn('marks')).toEqual(['circle rug', 'mat 1']);
    expect(wordsOn('things')).toEqual(['T1']);
  });

  it('is drawn once while it is in hand', () => {
    model.moving = { ids: new Set(['r1']), bodies: [], from: [], lines: [], distances: [] };
    expect(wordsOn('marks')).toEqual(['mat 1']);
  });
});

describe('a room seen from far', () => {
  it('has no number on a thing too small for it, but for the chosen one', () => {
    model.view = { k: 0.01, x: 0, y: 0 };
    expect(wordsOn('things')).toEqual([]);
    session.setView({ chosen: { kind: 'piece', id: 't1' } });
    expect(wordsOn('over')).toContain('T1');
    model.view = { k: 0.08, x: 0, y: 0 };
    expect(wordsOn('over')).not.toContain('T1');
  });

  it('has smaller marks, none on another, and the one looked at; seen from near it has them all', () => {
    const findings = Array.from({ length: 40 }, (_, i) => finding({ key: `k${i}`, at: { x: 200 + i * 150, y: 4000 } }));
    const all = report(findings);
    const shown = findings[1] as (typeof findings)[0];
    const marksAt = (k: number, one: typeof shown | null) => {
      const pen = { ctx: canvas({}), view: { k, x: 0, y: 0 }, units: 'metric', isRightToLeft: false } as const;
      return layMarks(pen, labelsOf(pen, model), all, one);
    };
    const far = marksAt(0.01, null);
    expect(far.length).toBeLessThan(10);
    for (const [i, mark] of far.slice(1).entries()) expect(mark.at.x - (far[i]?.at.x ?? 0)).toBeGreaterThanOrEqual(8);
    expect(marksAt(0.01, shown).map(({ finding: { key } }) => key)).toContain('k1');
    expect(marksAt(0.1, null)).toHaveLength(40);
  });
});

describe('a narrow way that is pointed at', () => {
  it('has a ring round the place where it is narrow, wide enough for both its ends', () => {
    const arcs: (readonly number[])[] = [];
    const noting = canvas({ arc: (...arc: number[]) => arcs.push(arc.slice(0, 3)) });
    const narrow = finding({
      rule: 'way/width',
      subjects: ['t1'],
      at: { x: 3000, y: 3000 },
      measured: { value: 600, unit: 'mm' },
      needed: { value: 711, unit: 'mm' },
    });
    const ways = [
      {
        at: { x: 3000, y: 3000 },
        between: [
          { x: 2700, y: 3000 },
          { x: 3300, y: 3000 },
        ],
      },
    ];
    session.setReport({ ...report([narrow]), measures: { ways } } as never);
    session.setView({ finding: narrow.key });
    const ring = (): boolean => {
      arcs.length = 0;
      drawLayer('checks', noting, model);
      // 0.6 m at 0.08 px a mm, and 8 px of air.
      return arcs.some(([x, y, radius]) => x === 240 && y === 240 && radius === 32);
    };
    expect(ring()).toBe(false);
    model.store.set({ pointed: narrow.key });
    expect(ring()).toBe(true);
  });
});

describe('a chosen tray', () => {
  it('marks the shelf that holds it, also after it went to another', () => {
    session = planSession({
      pieces: [
        { id: 's1', kind: 'shelf', x: 1000, y: 300, width: 1200, depth: 320, sides: ['front'], levels: [{ id: 'l1', surface: 300 }] },
        { id: 's2', kind: 'shelf', x: 4000, y: 300, width: 1200, depth: 320, sides: ['front'], levels: [{ id: 'l1', surface: 300 }] },
      ],
      materials: [{ id: 'm1', name: 'Rods', width: 300, depth: 200 }],
      placements: [{ material: 'm1', piece: 's2', side: 'front', level: 'l1', x: 100, y: 0, turned: false }],
    });
    model = createPlanModel(session, () => {});
    model.size = { width: 600, height: 500 };
    model.view = { k: 0.01, x: 0, y: 0 };
    // Seen from far only what is marked bears its number.
    expect(wordsOn('over')).not.toContain('2');
    session.setView({ chosen: { kind: 'tray', id: 'm1' } });
    expect(wordsOn('over')).toContain('2');
    session.commands.place('a1', { material: 'm1', piece: 's1', side: 'front', level: 'l1', x: 100, y: 0, turned: false });
    expect(wordsOn('over')).toContain('1');
    expect(wordsOn('over')).not.toContain('2');
  });
});

import { beforeEach, describe, expect, it } from 'vitest';
import { drawLayer } from '#client/plan/layers.ts';
import { createPlanModel, type LayerName, type PlanModel } from '#client/plan/planModel.ts';
import { report } from '../checks/finding.ts';
import { type PlanSession, planSession } from './planSession.ts';

let session: PlanSession;
let model: PlanModel;

/** The words that a canvas writes, in their order. */
function wordsOn(name: LayerName): string[] {
  const written: string[] = [];
  const made: Record<string, unknown> = {
    fillText: (text: string) => written.push(text),
    measureText: (text: string) => ({ width: text.length * 6 }),
  };
  const context = new Proxy(made, { get: (target, key) => target[String(key)] ?? (() => undefined) });
  drawLayer(name, context as unknown as CanvasRenderingContext2D, model);
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

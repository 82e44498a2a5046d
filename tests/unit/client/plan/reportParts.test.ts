import { expect, it } from 'vitest';
import { leastWordIn, narrowPlaceOf } from '#client/plan/reportParts.ts';
import { analyse } from '#model/analysis/report.ts';
import { SEATED_DEPTH, seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

it('the arrow of a narrow place beside a table in use ends where its children begin, whose floor is drawn', () => {
  const classroom = plainRoom({
    pieces: [{ id: 't1', kind: 'table', x: 3000, y: 1090, width: 1200, depth: 600, height: 530, seatSides: { back: 2 } }],
  });
  const scene = buildScene(classroom);
  const report = analyse(classroom);
  const finding = report.findings.find(({ rule }) => rule === 'way/narrow');
  if (!finding) throw new Error('the place is not found');
  const strips = seatStrips(scene);
  const place = narrowPlaceOf(finding, report, { bodyById: (id) => scene.bodyById.get(id), room: scene.room, strips });
  expect(finding.message).toContain('0.483 m behind its edge are kept for the children on them.');
  expect(place?.measured).toBeCloseTo(790 - SEATED_DEPTH, 3);
  expect(Math.hypot((place?.a.x ?? 0) - (place?.b.x ?? 0), (place?.a.y ?? 0) - (place?.b.y ?? 0))).toBeCloseTo(790 - SEATED_DEPTH, 0);
  expect(place?.kept).toEqual([strips[0]?.strip]);
});

it('mats are at least so many until that is proven', () => {
  const report = analyse(plainRoom());
  const withMats = (mats: unknown) => ({ ...report, measures: { ...report.measures, mats } }) as typeof report;
  expect(leastWordIn(withMats({ count: 12, upperBound: 15, proven: false }))).toBe('at least');
  expect(leastWordIn(withMats({ count: 12, upperBound: 12, proven: true }))).toBe('');
  expect(leastWordIn(withMats(null))).toBe('');
  expect(leastWordIn(null)).toBe('');
});

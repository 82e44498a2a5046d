import { describe, expect, it } from 'vitest';
import { middlesOf, sayUnseen, unseenToDraw } from '#client/plan/unseen.ts';
import { analyse } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

/** A chair in one corner and a high shelf across the room: floor behind it is hidden. */
const room = plainRoom({
  pieces: [
    { id: 'chair', kind: 'adult-seat', x: 600, y: 600, width: 450, depth: 450, height: 400 },
    { id: 's1', kind: 'shelf', x: 3000, y: 2500, width: 1800, depth: 320, height: 1600 },
  ],
});
const report = analyse(room);
const finding = (rule: string): Finding => ({
  key: rule,
  rule,
  messageKey: 'm',
  outcome: 'problem',
  severity: 'must',
  subjects: [],
  message: 'm',
  why: '',
  sources: [],
  missing: [],
  leftReason: null,
});
const idle = { finding: null, isMoving: false, floor: 30e6 };

describe('unseen floor', () => {
  it('is drawn while a finding of sight is looked at, or nothing is', () => {
    const all = unseenToDraw(report, { ...idle, finding: finding('sight/hidden') });
    expect(all.length).toBeGreaterThan(0);
    expect(unseenToDraw(report, idle).length).toBeGreaterThan(0);
  });

  it('is left out while another finding is looked at or something moves', () => {
    expect(unseenToDraw(report, { ...idle, finding: finding('way/narrow') })).toEqual([]);
    expect(unseenToDraw(report, { ...idle, isMoving: true, finding: finding('sight/hidden') })).toEqual([]);
    expect(unseenToDraw(null, idle)).toEqual([]);
  });

  it('waits to be asked for where it would crowd the sheet', () => {
    expect(unseenToDraw(report, { ...idle, floor: 1e6 })).toEqual([]);
    expect(unseenToDraw(report, { ...idle, floor: 1e6, finding: finding('sight/pocket') }).length).toBeGreaterThan(0);
  });

  it('bears its words inside, in no hole', () => {
    const square = (x: number, y: number, size: number) => [
      { x, y },
      { x: x + size, y },
      { x: x + size, y: y + size },
      { x, y: y + size },
    ];
    const points = middlesOf({ outline: square(0, 0, 900), holes: [square(300, 300, 300)] });
    expect(points.length).toBeGreaterThan(10);
    for (const { x, y } of points) expect(x > 300 && x < 600 && y > 300 && y < 600).toBe(false);
    expect(middlesOf({ outline: square(0, 0, 900), holes: [] })[0]).toEqual({ x: 450, y: 450 });
  });

  it('says from where', () => {
    const seat = room.arrangements[0]?.pieces.filter(({ kind }) => kind === 'adult-seat') ?? [];
    expect(sayUnseen({ pieces: seat })).toBe('not seen from the chair');
    expect(sayUnseen({ pieces: [...seat, ...seat] })).toBe('not seen from the chairs');
    expect(sayUnseen({ watch: [{ id: 'w', x: 0, y: 0, eye: 1100 }], pieces: seat })).toBe('not seen from where you watch');
  });
});

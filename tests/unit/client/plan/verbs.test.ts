import { beforeEach, describe, expect, it } from 'vitest';
import { describeItem, nameOfItem } from '#client/plan/describe.ts';
import type { Item } from '#client/plan/items.ts';
import { copyThings } from '#client/plan/set/copies.ts';
import { thingOf } from '#client/plan/things.ts';
import { finishWalls } from '#client/plan/toolPress.ts';
import { choose, gapToWall, putAway, setGapToWall, slideBy, toggleLock, toTheWall, turnBy } from '#client/plan/verbs.ts';
import { analyse } from '#model/analysis/report.ts';
import { type PlanSession, planSession } from './planSession.ts';

const shelf: Item = { kind: 'piece', id: 's7' };
let session: PlanSession;

beforeEach(() => {
  session = planSession({
    pieces: [
      {
        id: 's7',
        kind: 'shelf',
        name: 'First numbers',
        x: 1260,
        y: 2500,
        rotation: 270,
        width: 1200,
        depth: 320,
        height: 700,
        levels: [{ id: 'l1', surface: 640 }],
      },
    ],
    placements: [{ material: 'm1', piece: 's7', level: 'l1', x: 0 }],
    materials: [{ id: 'm1', name: 'Number rods', area: 'mathematics' }],
  });
});
const now = () => thingOf(session, shelf) ?? { x: Number.NaN, y: Number.NaN, rotation: Number.NaN };

describe('verbs of the chosen thing', () => {
  it('says what is chosen: number, area, squares, where it is open to', () => {
    choose(session, shelf);
    expect(session.said.at(-1)).toBe('Shelf 7, mathematics, B2 to B4, open to the east');
    expect(session.view()).toMatchObject({ chosen: shelf, frontOf: { piece: 's7', side: 'front' } });
  });

  it('adds the gravest finding as a sentence that says where, of two as grave the nearer', () => {
    const report = analyse(session.classroom());
    const narrow = {
      rule: 'way/narrow',
      messageKey: 'narrow',
      outcome: 'problem',
      severity: 'must',
      subjects: ['s7', 'wall:c4'],
      why: '',
      needed: { value: 915, unit: 'mm' },
      sources: [],
      missing: [],
      leftReason: null,
    } as const;
    const far = {
      ...narrow,
      key: 'f',
      message: 'The way is too narrow by the door.',
      measured: { value: 700, unit: 'mm' },
      at: { x: 5500, y: 4500 },
    } as const;
    const near = {
      ...narrow,
      key: 'n',
      message: 'The way is too narrow by the wall.',
      measured: { value: 740, unit: 'mm' },
      at: { x: 1300, y: 1500 },
    } as const;
    session.setReport({ ...report, findings: [far, near] });
    expect(describeItem(session, shelf)).toMatch(/\. At [A-Z]\d a way is 0\.74 m wide; it must be 0\.915 m$/);
    session.setReport({ ...report, findings: [far, { ...near, severity: 'should' }] });
    expect(describeItem(session, shelf)).toMatch(/\. At [A-Z]\d a way is 0\.70 m wide; it must be 0\.915 m$/);
    session.setReport({
      ...report,
      findings: [{ ...near, rule: 'sight/corner', severity: 'should', message: 'A corner is out of sight.' }],
    });
    expect(describeItem(session, shelf)).toMatch(/\. Should, at [A-Z]\d: A corner is out of sight$/);
    const open = { ...near, rule: 'steady/tip', outcome: 'cannot-tell', message: 'Whether it could tip over is not known.' } as const;
    session.setReport({ ...report, findings: [open] });
    expect(describeItem(session, shelf)).toMatch(/\. Not known, at [A-Z]\d: Whether it could tip over is not known$/);
    session.setReport({ ...report, findings: [open, { ...near, rule: 'sight/corner', severity: 'note', message: 'A corner.' }] });
    expect(describeItem(session, shelf)).toMatch(/\. Note, at [A-Z]\d: A corner$/);
  });

  it('slides, but never out of the room', () => {
    expect(slideBy(session, shelf, { x: -50, y: 0 })).toBe(true);
    expect(now()).toMatchObject({ x: 1210 });
    slideBy(session, shelf, { x: -5000, y: 0 });
    expect(now().x).toBeCloseTo(160, 6);
  });

  it('says which wall stops it, whether it still moved a little or not at all', () => {
    slideBy(session, shelf, { x: -5000, y: 0 });
    expect(session.said.at(-1)).toContain('. It stands against the west wall');
    expect(slideBy(session, shelf, { x: -50, y: 0 })).toBe(false);
    expect(session.said.at(-1)).toBe('Shelf 7 stands against the west wall.');
    slideBy(session, shelf, { x: 50, y: 0 });
    expect(session.said.at(-1)).not.toContain('wall');
  });

  it('turns in place and goes with its back to the nearest wall', () => {
    turnBy(session, shelf, 30);
    expect(now().rotation).toBe(300);
    toTheWall(session, shelf);
    expect(now()).toMatchObject({ x: 160, y: 2500, rotation: 270 });
  });

  it('takes a typed distance to a wall', () => {
    const thing = thingOf(session, shelf);
    expect(thing && gapToWall(session, thing, 'west')).toBeCloseTo(1100, 6);
    setGapToWall(session, shelf, 'west', 915);
    expect(now().x).toBeCloseTo(1075, 6);
  });

  it('stays where it is when locked, and says so', () => {
    const piece = session.arrangement().pieces[0];
    if (!piece) throw new Error('no shelf');
    toggleLock(session, piece);
    expect(slideBy(session, shelf, { x: 50, y: 0 })).toBe(false);
    expect(session.said.at(-1)).toBe('Shelf 7 is locked. Unlock it to move it.');
    expect(now().x).toBe(1260);
  });

  it('puts a shelf away with its trays on the table, and brings both back', () => {
    putAway(session, shelf);
    expect(session.said.at(-1)).toBe('Shelf 7 is put away; 1 tray is on the table. Take back brings it again while this page stays open.');
    expect(session.arrangement().placements).toEqual([]);
    session.undo.takeBack();
    expect(session.arrangement().placements).toMatchObject([{ material: 'm1', piece: 's7' }]);
  });

  it('makes the same again beside it, with a number of its own and no trays', () => {
    const [{ id } = { id: '' }] = copyThings(session, [shelf]);
    const copy = session.arrangement().pieces.find((p) => p.id === id);
    expect(copy).toMatchObject({ name: 'Shelf 8', width: 1200, depth: 320, rotation: 270, levels: [{ surface: 640 }] });
    expect(copy && Math.hypot(copy.x - 1260, copy.y - 2500)).toBeGreaterThan(300);
    expect(session.arrangement().placements).toHaveLength(1);
  });

  it('calls walls by the side of the sheet', () => {
    expect(['c1', 'c2', 'c3', 'c4'].map((id) => nameOfItem(session, { kind: 'wall', id }))).toEqual([
      'North wall',
      'East wall',
      'South wall',
      'West wall',
    ]);
  });
});

describe('walls drawn anew', () => {
  it('become the room, doors going along, in one step', () => {
    const ring = [
      { x: 0, y: 0 },
      { x: 0, y: 4000 },
      { x: 7000, y: 4000 },
      { x: 7000, y: 0 },
    ];
    expect(finishWalls(session, ring)).toBe(true);
    const { corners, openings } = session.classroom().room;
    expect(corners).toHaveLength(4);
    expect(corners.some((c) => c.id === openings[0]?.from)).toBe(true);
    session.undo.takeBack();
    expect(session.classroom().room.corners.map((c) => c.id)).toEqual(['c1', 'c2', 'c3', 'c4']);
  });

  it('are refused when they cross, and nothing changes', () => {
    const crossed = [
      { x: 0, y: 0 },
      { x: 4000, y: 4000 },
      { x: 4000, y: 0 },
      { x: 0, y: 4000 },
    ];
    expect(finishWalls(session, crossed)).toBe(false);
    expect(session.classroom().room.corners).toHaveLength(4);
    expect(session.said.at(-1)).toContain('cross each other');
  });
});

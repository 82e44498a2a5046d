import { describe, expect, it } from 'vitest';
import { createDocument } from '#model/document/openDocument.ts';
import type { Change } from '#model/document/types.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Edit } from '#model/findings/edit.ts';
import type { Classroom } from '#model/schema/types.ts';
import { furnished } from '../../support/furnished.ts';

const open = () => {
  let made = 0;
  return createDocument(furnished(), { newId: (kind) => `${kind}-${++made}`, now: () => '2027-01-02T03:04:05.000Z' });
};
const first = (classroom: Classroom) => {
  const arrangement = classroom.arrangements[0];
  if (!arrangement) throw new Error('no arrangement');
  return arrangement;
};

describe('commands', () => {
  it('are one transaction each, told as own', () => {
    const document = open();
    const changes: Change[] = [];
    document.onChange((change) => changes.push(change));
    document.commands.movePiece('a1', 's1', { x: 1, y: 2, rotation: 90 });
    document.commands.removeMaterial('m1');
    document.commands.changeClass({ name: 'Juniper', sprinklered: true, adults: [{ role: 'lead', count: 1 }] });
    expect(changes).toEqual([{ from: 'own' }, { from: 'own' }, { from: 'own' }]);
  });

  it('add after what is there and hand back the id', () => {
    const { commands, read } = open();
    expect(commands.addPiece('a1', { kind: 'shelf', x: 1, y: 2, width: 900, depth: 300 })).toBe('shelf-1');
    expect(commands.addLevel('a1', 'shelf-1', { surface: 400 })).toBe('board-2');
    expect(first(read()).pieces.at(-1)).toMatchObject({ id: 'shelf-1', panel: 20, levels: [{ id: 'board-2', surface: 400, clear: null }] });
    expect(commands.addMaterial({ name: 'Sound boxes' })).toBe('m-3');
    expect(read().materials.map(({ id }) => id)).toEqual(['m1', 'm2', 'm-3']);
    expect(commands.addOpening({ kind: 'window', from: 'c2', offset: 100, width: 900 })).toBe('window-4');
    expect(commands.addFixture({ kind: 'sink', x: 1, y: 1, width: 600, depth: 400 })).toBe('sink-5');
    expect(commands.addRemark({ text: 'ask the porter' })).toBe('n-6');
    expect(read().notes.map(({ text }) => text)).toEqual(['measure again', 'ask the porter']);
  });

  it('never overwrite by adding: a taken id gets another', () => {
    const { commands, read } = open();
    expect(commands.addPiece('a1', { id: 's1', kind: 'table', x: 0, y: 0, width: 1, depth: 1 })).toBe('table-1');
    expect(first(read()).pieces.map(({ id }) => id)).toEqual(['s1', 's2', 't1', 'table-1']);
  });

  it('change fields, and take an undefined one back to its default', () => {
    const { commands, read } = open();
    commands.changePiece('a1', 't1', { seatSides: { back: 3 }, round: true, name: 'Long table' });
    expect(first(read()).pieces[2]).toMatchObject({ seatSides: { back: 3 }, round: true, name: 'Long table' });
    const bare: Record<string, unknown> = { name: undefined, round: undefined };
    commands.changePiece('a1', 't1', bare);
    expect(first(read()).pieces[2]?.name).toBe('');
    expect(first(read()).pieces[2]).not.toHaveProperty('round');
  });

  it('do nothing on a thing that is gone', () => {
    const { commands, read } = open();
    const before = read();
    const gone = [
      commands.movePiece('a1', 'nobody', { x: 1, y: 1 }),
      commands.movePiece('nowhere', 's1', { x: 1, y: 1 }),
      commands.putAwayPiece('a1', 'nobody'),
      commands.changeLevel('a1', 's1', 'l9', { surface: 1 }),
      commands.removeLevel('a1', 's1', 'l9'),
      commands.place('a1', { material: 'm9', piece: 's1', side: 'front', level: 'l1', x: 0, y: 0, turned: false }),
      commands.place('a1', { material: 'm1', piece: 's9', side: 'front', level: 'l1', x: 0, y: 0, turned: false }),
      commands.place('a1', { material: 'm1', piece: 's1', side: 'front', level: 'l9', x: 0, y: 0, turned: false }),
      commands.putAway('a2', 'm1'),
      commands.removeMaterial('m9'),
      commands.moveCorner('c9', { x: 0, y: 0 }),
      commands.removeArrangement('a9'),
      commands.setCurrent('a9'),
      commands.takeUpAgain('nothing'),
      commands.changeRemark('n9', { done: true }),
    ];
    expect(gone).toEqual(gone.map(() => false));
    expect(read()).toBe(before);
    expect(() => commands.addPiece('nowhere', { kind: 'shelf', x: 0, y: 0, width: 1, depth: 1 })).toThrow('no longer there');
  });

  it('refuse values that no file may hold, with nothing written', () => {
    const { commands, read } = open();
    const before = read();
    expect(() => commands.movePiece('a1', 's1', { x: Number.NaN, y: 0 })).toThrow('s1.x: found NaN, expected a finite number');
    expect(() => commands.changePiece('a1', 's1', { width: -1 })).toThrow('expected more than 0');
    expect(() => commands.setCorners([{ id: 'c1', x: 0, y: 0 }])).toThrow('at least 3 entries');
    expect(() => commands.addMaterial({ name: 'x'.repeat(3000) })).toThrow('at most 2000 characters');
    expect(() => commands.changeMaterial('m1', JSON.parse('{"constructor": 1}'))).toThrow('reserved key');
    expect(read()).toBe(before);
  });

  it('place, move and put away a tray', () => {
    const { commands, read } = open();
    commands.place('a1', { material: 'm1', piece: 's2', side: 'front', level: 'l1', x: 300, y: 10, turned: true });
    expect(first(read()).placements).toEqual([
      { material: 'm1', piece: 's2', side: 'front', level: 'l1', x: 300, y: 10, turned: true },
      expect.objectContaining({ material: 'm2', piece: 's1' }),
    ]);
    expect(commands.putAway('a1', 'm1')).toBe(true);
    expect(first(read()).placements.map(({ material }) => material)).toEqual(['m2']);
  });

  it('take a shelf away and leave its trays on the table; taking back brings them back', () => {
    const { commands, read, undo } = open();
    const before = read();
    commands.putAwayPiece('a1', 's1');
    expect(first(read()).placements).toEqual([]);
    expect(first(read()).walk).toEqual([{ piece: 's2', side: 'front' }]);
    expect(read().notes[0]).toMatchObject({ on: null, text: 'measure again' });
    undo.takeBack();
    expect(read()).toEqual(before);
  });

  it('draw the walls anew, keeping corners that stay', () => {
    const { commands, read } = open();
    const kept = read().room.corners[1];
    const corners = read().room.corners;
    commands.setCorners([...corners.slice(0, 2), { id: 'c5', x: 6500, y: 2500 }, ...corners.slice(2)]);
    expect(read().room.corners.map(({ id }) => id)).toEqual(['c1', 'c2', 'c5', 'c3', 'c4']);
    expect(read().room.corners[1]).toBe(kept);
    commands.setCorners([...read().room.corners].reverse());
    expect(read().room.corners.map(({ id }) => id)).toEqual(['c4', 'c3', 'c5', 'c2', 'c1']);
    commands.moveCorner('c5', { x: 6600, y: 2500 });
    expect(read().room.corners[2]).toEqual({ id: 'c5', x: 6600, y: 2500 });
  });

  it('keep walk, watch and survey, absent and empty apart', () => {
    const { commands, read } = open();
    expect(first(read()).watch).toBeUndefined();
    commands.setWatch('a1', []);
    expect(first(read()).watch).toEqual([]);
    commands.setWatch('a1', [{ id: 'w1', x: 1, y: 2, eye: 1100 }]);
    expect(first(read()).watch).toEqual([{ id: 'w1', x: 1, y: 2, eye: 1100 }]);
    commands.setWalk('a1', [
      { piece: 's2', side: 'front' },
      { piece: 's1', side: 'front' },
    ]);
    expect(first(read()).walk?.map(({ piece }) => piece)).toEqual(['s2', 's1']);
    commands.changeRoom({ survey: { walls: [{ from: 'c1', length: 6000, turn: 90 }], diagonals: [] }, toilets: 2 });
    expect(read().room).toMatchObject({ toilets: 2, survey: { walls: [{ from: 'c1', length: 6000, turn: 90 }], diagonals: [] } });
    commands.changeRoom({ survey: null });
    expect(read().room.survey).toBeNull();
  });

  it('change children, settings and what is left as it is', () => {
    const { commands, read } = open();
    const children = read().children;
    const group = { id: 'g2', name: 'four', fromMonths: 48, toMonths: 60, count: 6 };
    commands.changeClass({ children: { ...children, percentile: 10, groups: [...children.groups, group] } });
    expect(read().children).toEqual({ ...children, percentile: 10, groups: [...children.groups, group] });
    commands.changeClass({ options: { 'way/width': { least: 900 } }, asked: { walkway_in_room: 'count' } });
    commands.changeClass({ options: {} });
    expect(read()).toMatchObject({ options: {}, asked: { walkway_in_room: 'count' } });
    commands.leave('way/width:s1', 'a fixed heater', 'AB');
    commands.leave('way/width:s1', 'a fixed radiator', 'AB');
    expect(read().left).toEqual([{ key: 'way/width:s1', reason: 'a fixed radiator', by: 'AB', at: '2027-01-02T03:04:05.000Z' }]);
    expect(commands.takeUpAgain('way/width:s1')).toBe(true);
    expect(read().left).toEqual([]);
    commands.changeMoveDay({ done: { s1: true }, date: '2027-08-20' });
    commands.changeMoveDay({ done: { s2: true }, date: undefined });
    expect(read().moveDay).toEqual({ done: { s1: true, s2: true } });
  });

  it('copy, name, choose and remove arrangements; one always stays', () => {
    const { commands, read } = open();
    const copy = commands.addArrangement('By the garden', 'a1');
    expect(read().arrangements.map(({ name }) => name)).toEqual(['As it stands', 'By the window', 'By the garden']);
    expect(read().arrangements[2]).toEqual({ ...first(read()), id: copy, name: 'By the garden' });
    commands.movePiece(copy, 's1', { x: 5, y: 5 });
    expect(first(read()).pieces[0]?.x).toBe(900);
    commands.setCurrent(copy);
    commands.renameArrangement(copy, 'Garden');
    expect(commands.removeArrangement(copy)).toBe(true);
    expect(read().current).toBe('a1');
    expect(commands.removeArrangement('a1')).toBe(true);
    expect(commands.removeArrangement('a2')).toBe(false);
  });

  it('do a fix as the analyser sees it done, in one step', () => {
    const document = open();
    const before = document.read();
    const edits: Edit[] = [
      { do: 'move-piece', piece: 's2', x: 2600, y: 250 },
      { do: 'change-piece', piece: 't1', set: { anchored: true } },
      { do: 'change-level', piece: 's1', level: 'l2', set: { surface: 300, clear: null } },
      { do: 'place', placement: { material: 'm2', piece: 's2', side: 'front', level: 'l1', x: 10, y: 0, turned: false } },
      { do: 'put-away', material: 'm1' },
    ];
    expect(document.commands.applyEdits('a1', edits)).toBe(true);
    expect(document.read()).toEqual(applyEdits(before, 'a1', edits));
    document.undo.takeBack();
    expect(document.read()).toEqual(before);
    expect(document.undo.canTakeBack()).toBe(false);
    expect(document.commands.applyEdits('a1', [...edits, { do: 'move-piece', piece: 'gone', x: 0, y: 0 }])).toBe(false);
    expect(document.read()).toEqual(before);
  });
});

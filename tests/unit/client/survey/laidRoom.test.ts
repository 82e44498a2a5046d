import { describe, expect, it } from 'vitest';
import { changeWall, type Draft, draftOf, emptyDraft, isUntouched, takeWallOut } from '#client/survey/draft.ts';
import { laidRoom } from '#client/survey/laidRoom.ts';
import { walkOf } from '#client/survey/walk.ts';
import { whatNoLongerFits, writeSurvey } from '#client/survey/writeSurvey.ts';
import { measureClosure } from '#model/measures/closure.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { planSession } from '#tests/unit/client/plan/planSession.ts';

const fixtures = [
  { id: 'sink', kind: 'sink' as const, x: 5500, y: 4775, width: 600, depth: 450, rotation: 180 },
  { id: 'post', kind: 'column' as const, x: 1500, y: 1200, width: 300, depth: 300 },
];
const furnished = () =>
  planSession({
    room: { fixtures },
    pieces: [{ id: 's1', kind: 'shelf', x: 5800, y: 2500, width: 1200, depth: 320, height: 700, rotation: 90 }],
  });

function taped(draft: Draft, lengths: Readonly<Record<string, number>>): Draft {
  return Object.entries(lengths).reduce((now, [corner, length]) => changeWall(corner, { length })(now), draft);
}
function laid(session: ReturnType<typeof planSession>, draft: Draft) {
  const found = laidRoom(session.classroom().room, draft, walkOf(draft));
  if (!found) throw new Error('the walk has not come round');
  return found;
}

describe('a room that is measured again', () => {
  it('keeps doors and fixtures on their walls, and what was taped beside it', () => {
    const session = furnished();
    const draft = taped(draftOf(session.classroom().room), { c1: 6400, c2: 5000, c3: 6400, c4: 5000 });
    const { room } = laid(session, draft);
    expect(room.corners.map(({ id, x, y }) => [id, x, y])).toEqual([
      ['c1', 0, 0],
      ['c2', 6400, 0],
      ['c3', 6400, 5000],
      ['c4', 0, 5000],
    ]);
    expect(room.openings[0]).toMatchObject({ id: 'd1', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'out-left', exit: true });
    // The sink goes with the east and south walls, the column with the north and west ones.
    expect(room.fixtures.map(({ id, x, y, rotation }) => [id, x, y, rotation])).toEqual([
      ['sink', 5900, 4775, 180],
      ['post', 1500, 1200, 0],
    ]);
    expect(room.survey?.walls.map(({ from, length, turn }) => [from, length, turn])).toEqual([
      ['c1', 6400, 90],
      ['c2', 5000, 90],
      ['c3', 6400, 90],
      ['c4', 5000, 90],
    ]);
  });

  it('is one step to take back, and a file as before', () => {
    const session = furnished();
    const before = JSON.stringify(session.classroom());
    const draft = { ...taped(draftOf(session.classroom().room), { c1: 6010, c2: 5000, c3: 6000, c4: 5000 }), isSpread: true };
    const found = laid(session, draft);
    writeSurvey(session, found);
    expect(session.classroom().room).toEqual(found.room);
    // The check sees it as spread: nothing is off.
    const closure = measureClosure(session.scene());
    expect(closure?.traverse?.misclosure.x).toBeCloseTo(10, 6);
    expect(closure?.off).toBeLessThan(0.2);
    expect(readClassroom(JSON.parse(JSON.stringify(session.classroom()))).ok).toBe(true);
    session.undo.takeBack();
    expect(JSON.stringify(session.classroom())).toBe(before);
    expect(session.undo.canTakeBack()).toBe(false);
  });

  it('says what no longer fits, by name', () => {
    const session = furnished();
    const draft = taped(draftOf(session.classroom().room), { c1: 1200, c2: 5000, c3: 1200, c4: 5000 });
    const words = whatNoLongerFits(session.classroom(), 'a1', laid(session, draft));
    expect(words).toContain('Door reaches 0.10 m past the end of its wall.');
    expect(words.some((text) => /outside the walls/.test(text))).toBe(true);
    expect(whatNoLongerFits(session.classroom(), 'a1', laid(session, draftOf(session.classroom().room)))).toEqual([]);
  });

  it('loses no door with its wall', () => {
    const session = furnished();
    const { walls } = draftOf(session.classroom().room);
    const fresh: Draft = { ...emptyDraft(), walls: walls.map((wall, i) => ({ ...wall, corner: `n${i}`, length: wall.drawn })) };
    const found = laid(session, fresh);
    expect(found.moved).toEqual(['d1']);
    expect(found.room.openings[0]).toMatchObject({ id: 'd1', from: 'n0', offset: 400 });
    expect(found.room.fixtures.map(({ id }) => id)).toEqual(['sink', 'post']);
    expect(whatNoLongerFits(session.classroom(), 'a1', found)[0]).toBe('Door: its wall is gone, it went to the nearest one.');
  });

  it('with a wall taken out does not come round', () => {
    const session = furnished();
    const draft = takeWallOut('c3')(draftOf(session.classroom().room));
    expect(laidRoom(session.classroom().room, draft, walkOf(draft))).toBeNull();
  });
});

it('with diagonals is spread by least squares, and the check sees it as spread', () => {
  const session = furnished();
  const walls = taped(draftOf(session.classroom().room), { c1: 6008, c2: 5000, c3: 5998, c4: 4996 });
  const draft: Draft = {
    ...walls,
    isSpread: true,
    diagonals: [
      { key: 'k1', from: 'c1', to: 'c3', length: 7812 },
      { key: 'k2', from: 'c2', to: 'c4', length: 7806 },
    ],
  };
  const walk = walkOf(draft);
  expect([walk.how, walk.fit?.misfit]).toEqual(['squares', null]);
  writeSurvey(session, laid(session, draft));
  const closure = measureClosure(session.scene());
  expect(closure?.off).toBeLessThan(0.2);
  for (const { taped: tape, made } of closure?.diagonals ?? []) expect(Math.abs(tape - made)).toBeLessThan(10);
  expect(session.classroom().room.survey?.diagonals.length).toBe(2);
});

describe('new things of the walk', () => {
  it('stand where the tape says: a door from the corner, a column from two walls', () => {
    const session = planSession({ room: { openings: [] } });
    const draft = draftOf(session.classroom().room);
    const found = laid(session, {
      ...draft,
      openings: [{ key: 'door-1', isNew: true, wall: 'c2', kind: 'door', name: '', offset: 1200, width: 900, sill: 0, swing: 'in-right' }],
      fixtures: [
        {
          key: 'column-1',
          isNew: true,
          kind: 'column',
          name: '',
          wall: 'c1',
          gap: 800,
          side: 'c4',
          along: 500,
          width: 300,
          depth: 400,
          height: null,
          turned: 0,
        },
        {
          key: 'step-1',
          isNew: true,
          kind: 'step',
          name: '',
          wall: 'c1',
          gap: 0,
          side: 'c3',
          along: 500,
          width: 300,
          depth: 400,
          height: null,
          turned: 0,
        },
      ],
    });
    expect(found.room.openings[0]).toMatchObject({ id: 'door-1', from: 'c2', offset: 1200, swing: 'in-right', exit: true });
    expect(found.room.fixtures[0]).toMatchObject({ id: 'column-1', x: 650, y: 1000, rotation: 0 });
    // Two walls that run side by side tell no place: it is kept, half way along the one it has its back to, and said.
    expect(found.room.fixtures[1]).toMatchObject({ id: 'step-1', x: 3150, y: 200, rotation: 0 });
    expect(found.unplaced).toEqual(['step-1']);
    expect(whatNoLongerFits(session.classroom(), 'a1', found)).toEqual([
      'Step: the two walls it is measured from run side by side, so it stands at the middle of the first. Choose another wall.',
    ]);
    writeSurvey(session, found);
    expect(session.classroom().room.openings.map(({ id }) => id)).toEqual(['door-1']);
  });

  it('on a wall without a length yet stand on the last one that has, and are said', () => {
    const session = planSession({ room: { openings: [] } });
    const draft = draftOf(session.classroom().room);
    const blank = { corner: 'c9', length: null, drawn: null, bend: 'right' as const, angle: 90 };
    const found = laid(session, {
      ...draft,
      walls: [...draft.walls, blank],
      openings: [{ key: 'door-1', isNew: true, wall: 'c9', kind: 'door', name: '', offset: 4800, width: 900, sill: 0, swing: 'in-right' }],
    });
    expect(found.room.openings).toMatchObject([{ id: 'door-1', from: 'c4', offset: 4100 }]);
    expect(whatNoLongerFits(session.classroom(), 'a1', found)).toEqual([
      'Door: its wall has no length yet, so it stands on the last one that has. Choose its wall.',
    ]);
  });

  it('count as typed: a new walk with a door and no length yet is kept', () => {
    const fresh = emptyDraft();
    expect(isUntouched(fresh, null)).toBe(true);
    const door = {
      key: 'd',
      isNew: true,
      wall: 'c',
      kind: 'door' as const,
      name: '',
      offset: 0,
      width: 900,
      sill: 0,
      swing: 'none' as const,
    };
    expect(isUntouched({ ...fresh, openings: [door] }, null)).toBe(false);
    expect(isUntouched({ ...fresh, walls: fresh.walls.map((wall) => ({ ...wall, bend: 'left' as const })) }, null)).toBe(false);
  });

  it('of a walk to the left come out as they were walked', () => {
    const session = planSession({ room: { openings: [] } });
    const left = (corner: string, length: number) => ({ corner, length, drawn: null, bend: 'left' as const, angle: -90 });
    const found = laid(session, {
      ...emptyDraft(),
      walls: [left('a', 3000), left('b', 4000), left('c', 3000), left('d', 4000)],
      openings: [{ key: 'door-1', isNew: true, wall: 'b', kind: 'door', name: '', offset: 1000, width: 900, sill: 0, swing: 'in-left' }],
    });
    const { corners, openings, survey } = found.room;
    // The walk: a (0,0) east to b (3,0), north to c (3,-4), west to d (0,-4). Clockwise on the sheet: a, d, c, b.
    expect(corners.map(({ id, x, y }) => [id, x, y])).toEqual([
      ['a', 0, 0],
      ['d', 0, -4000],
      ['c', 3000, -4000],
      ['b', 3000, 0],
    ]);
    // 1.00 m along the walk from b; the wall is written from c to b.
    expect(openings[0]).toMatchObject({ from: 'c', offset: 2100 });
    expect(survey?.walls.map(({ from, length, turn }) => [from, length, turn])).toEqual([
      ['a', 4000, 90],
      ['d', 3000, 90],
      ['c', 4000, 90],
      ['b', 3000, 90],
    ]);
  });
});

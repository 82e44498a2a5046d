import { describe, expect, it } from 'vitest';
import { evenBoards, spaceBoards } from '#client/front/spaceBoards.ts';
import { spaceTrays, type TraySpacing } from '#client/front/spaceTrays.ts';
import type { Session } from '#client/session/types.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Edit } from '#model/findings/edit.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { shelfRoom } from './shelf.ts';

/** A session over one room, of what these verbs ask; it remembers what was said and how often something was written. */
function sessionOver(start: Scene) {
  let scene = start;
  const said: string[] = [];
  let steps = 0;
  const session = {
    classroom: () => scene.classroom,
    arrangement: () => scene.arrangement,
    scene: () => scene,
    announce: (text: string) => void said.push(text),
    commands: {
      applyEdits(arrangement: string, edits: readonly Edit[]) {
        scene = buildScene(applyEdits(scene.classroom, arrangement, edits), arrangement);
        steps++;
        return true;
      },
    },
  };
  return { session: session as unknown as Session, said, steps: () => steps, scene: () => scene };
}

const sideOf = (scene: Scene): SceneSide => scene.sides[0] as SceneSide;

function spaced(trays: Parameters<typeof shelfRoom>[0], how: TraySpacing, change: Parameters<typeof shelfRoom>[1] = {}) {
  const start = shelfRoom(trays, change);
  const on = sessionOver(start);
  spaceTrays(on.session, sideOf(start), 'top', how);
  const board = sideOf(on.scene()).boards.find(({ level }) => level?.id === 'top');
  return { xs: board?.trays.map(({ material, placement }) => [material.id, placement.x]), said: on.said, steps: on.steps() };
}

describe('the trays of a board', () => {
  it('evenly: the same room between neighbours and at both ends', () => {
    // The board is 1360 long: 1360 - 600 leaves 760, four times 190.
    const { xs, said, steps } = spaced(
      [
        ['a', 'top', 0, 200],
        ['b', 'top', 210, 200],
        ['c', 'top', 900, 200],
      ],
      'evenly',
    );
    expect(xs).toEqual([
      ['a', 190],
      ['b', 580],
      ['c', 970],
    ]);
    expect(said).toEqual(['The trays stand evenly, 0.19 m apart.']);
    expect(steps).toBe(1);
  });

  it('side by side from where reading begins', () => {
    const trays: Parameters<typeof shelfRoom>[0] = [
      ['a', 'top', 100, 200],
      ['b', 'top', 500, 300],
    ];
    expect(spaced(trays, 'close').xs).toEqual([
      ['a', 0],
      ['b', 200],
    ]);
    const mirrored = spaced(trays, 'close', { display: { readingDirection: 'rtl' } });
    expect(mirrored.xs).toEqual([
      ['a', 860],
      ['b', 1060],
    ]);
    expect(mirrored.said).toEqual(['The trays stand side by side from the right.']);
  });

  it('stay, and it is said why, where they do not fit or a size is not known', () => {
    const long = spaced(
      [
        ['a', 'top', 0, 800],
        ['b', 'top', 400, 800],
      ],
      'close',
    );
    expect(long).toMatchObject({
      steps: 0,
      xs: [
        ['a', 0],
        ['b', 400],
      ],
    });
    expect(long.said).toEqual(['The trays stay as they are: side by side they are longer than the board of 1.36 m.']);
    const start = shelfRoom([['a', 'top', 0, 200]]);
    const unknown = buildScene(
      { ...start.classroom, materials: start.classroom.materials.map((m) => ({ ...m, width: null })) },
      start.arrangement.id,
    );
    const on = sessionOver(unknown);
    spaceTrays(on.session, sideOf(unknown), 'top', 'evenly');
    expect(on.said).toEqual(['The trays stay as they are: the size of Tray a is not known.']);
  });

  it('are not written twice', () => {
    const { said, steps } = spaced(
      [
        ['a', 'top', 0, 200],
        ['b', 'top', 200, 300],
      ],
      'close',
    );
    expect([said, steps]).toEqual([['The trays stand so already.'], 0]);
  });

  it('a board that is gone is said to be gone', () => {
    const start = shelfRoom([]);
    const on = sessionOver(start);
    spaceTrays(on.session, sideOf(start), 'taken out', 'close');
    expect(on.said).toEqual(['The board is gone; somebody took it out.']);
  });
});

describe('the boards of a shelf', () => {
  const shelfOf = (levels: readonly { id: string; surface: number; clear?: number }[]): Scene =>
    buildScene(
      plainRoom({
        pieces: [{ id: 's1', kind: 'shelf', x: 2000, y: 200, width: 1400, depth: 320, height: 900, levels: [...levels] }],
      }),
    );

  it('evenly between the lowest and the highest, in whole centimetres; typed clear heights that no longer hold go', () => {
    const start = shelfOf([
      { id: 'top', surface: 700 },
      { id: 'mid', surface: 300, clear: 350 },
      { id: 'low', surface: 65, clear: 200 },
    ]);
    const on = sessionOver(start);
    spaceBoards(on.session, sideOf(start));
    // 65 + (700 - 65) / 2 = 382.5
    expect(on.scene().arrangement.pieces[0]?.levels).toMatchObject([
      { id: 'top', surface: 700 },
      { id: 'mid', surface: 380, clear: null },
      { id: 'low', surface: 65, clear: null },
    ]);
    expect(on.said[0]).toMatch(/^The boards are evenly spaced, about 0\.32 m from one to the next\./);
  });

  it('that stand so already, or are fewer than three, stay', () => {
    expect(
      evenBoards(
        sideOf(
          shelfOf([
            { id: 'a', surface: 700 },
            { id: 'b', surface: 60 },
          ]),
        ),
      ),
    ).toEqual([]);
    const start = shelfOf([
      { id: 'a', surface: 660 },
      { id: 'b', surface: 360 },
      { id: 'c', surface: 60 },
    ]);
    const on = sessionOver(start);
    spaceBoards(on.session, sideOf(start));
    expect([on.said, on.steps()]).toEqual([['The boards stand evenly already.'], 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { trayMend } from '#client/front/putInStep.ts';
import { analyse } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { rules } from '#model/rules/registry.ts';
import { buildScene } from '#model/scene/build.ts';
import { shelfRoom } from './shelf.ts';

const ofOrder = rules.filter(({ id }) => id.startsWith('order/'));
type Trays = Parameters<typeof shelfRoom>[0];

function mendOf(trays: Trays, id: string) {
  const scene = shelfRoom(trays);
  const report = analyse(scene.classroom, { arrangement: scene.arrangement.id, rules: ofOrder });
  const done: string[] = [];
  let classroom = scene.classroom;
  const session = {
    arrangement: () => scene.arrangement,
    scene: () => buildScene(classroom, scene.arrangement.id),
    report: () => report,
    view: () => ({ finding: null }),
    setView: () => undefined,
    classroom: () => classroom,
    announce: (text: string) => done.push(text),
    commands: {
      applyEdits: (arrangement: string, edits: Parameters<typeof applyEdits>[2]) => {
        classroom = applyEdits(classroom, arrangement, edits);
        return true;
      },
    },
  };
  const mend = trayMend(scene, report, id);
  return {
    words: mend?.words ?? null,
    ordersLeft() {
      mend?.run(session as never);
      const then = analyse(classroom, { arrangement: scene.arrangement.id, rules: ofOrder });
      return then.findings.filter(({ rule, outcome }) => rule.startsWith('order/') && outcome === 'problem').map(({ message }) => message);
    },
  };
}

describe('putting a misplaced tray in step', () => {
  it('says on which board and beside what, and leaves nothing out of order', () => {
    const mend = mendOf(
      [
        ['c', 'top', 0, 200, 3],
        ['a', 'top', 300, 200, 1],
        ['b', 'top', 600, 200, 2],
        ['d', 'mid', 0, 200, 4],
      ],
      'c',
    );
    expect(mend.words).toBe('Put it on the top board, right of Tray b');
    expect(mend.ordersLeft()).toEqual([]);
  });

  it('offers the mend of the check where others have to move too', () => {
    const trays: Trays = [
      ['c', 'top', 0, 200, 3],
      ['d', 'top', 300, 200, 4],
      ['a', 'top', 600, 200, 1],
      ['b', 'top', 900, 200, 2],
    ];
    const mends = ['a', 'b', 'c', 'd'].map((id) => mendOf(trays, id)).filter(({ words }) => words !== null);
    expect(mends.length).toBeGreaterThan(0);
    for (const mend of mends) {
      expect(mend.words).toMatch(/^Do it: Tray \w and Tray \w in order$/);
      expect(mend.ordersLeft()).toEqual([]);
    }
  });

  it('has nothing for a tray in step', () => {
    expect(
      mendOf(
        [
          ['a', 'top', 0, 200, 1],
          ['b', 'top', 300, 200, 2],
        ],
        'b',
      ).words,
    ).toBeNull();
  });
});

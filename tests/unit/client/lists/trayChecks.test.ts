import { describe, expect, it } from 'vitest';
import { checksBySubject } from '#client/lists/trayChecks.ts';
import { analyse } from '#model/analysis/report.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { finding, report } from '../checks/finding.ts';

const thing = (id: string, change: object = {}) => ({ id, name: `Thing ${id}`, width: 200, depth: 150, height: 60, ...change });
const at = (material: string, level: string, x: number) => ({ material, piece: 's1', side: 'front' as const, level, x });

/** The smallest child of the plain room is a girl of 3 years, percentile 5: shoulder at 0.66 m, eye at 0.78 m, highest grip below 0.98 m (CDC Growth Charts, 2000; UM-HSRI-77-17, 1977; the worked example A of the anthropometry notes). Band in a wheelchair at 3 to 4 years: 0.51 to 0.915 m (A15). */
const room = (level: object, materials: readonly ReturnType<typeof thing>[], change: object = {}) =>
  plainRoom({
    pieces: [
      {
        id: 's1',
        kind: 'shelf',
        name: 'Dressing',
        x: 3000,
        y: 160,
        width: 1500,
        depth: 320,
        height: 1000,
        levels: [
          { id: 'top', surface: 1000, ...level },
          { id: 'low', surface: 560 },
        ],
      },
    ],
    materials: [...materials, thing('well')],
    placements: [...materials.map(({ id }, i) => at(id, 'top', 20 + 260 * i)), at('well', 'low', 20)],
    ...change,
  });

/** Each check that means a tray, as "severity rule", gravest first. */
const saidOf = (classroom: ReturnType<typeof room>, id: string): string[] =>
  (checksBySubject(analyse(classroom)).get(id) ?? []).map(({ severity, rule }) => `${severity} ${rule}`);

describe('what is said of a tray', () => {
  it('has every check of a board that means it, the gravest first, and none that does not', () => {
    const high = room({}, [thing('high'), thing('heavy', { mass: 2.5, heaviest: 2.5, hands: 2 })]);
    expect(saidOf(high, 'high')).toEqual(['must reach/take', 'should reach/see']);
    expect(saidOf(high, 'heavy')).toEqual(['must reach/take', 'should reach/see', 'should reach/carry', 'note reach/two-hands']);
    expect(saidOf(high, 'well')).toEqual([]);
  });

  it('has the band of a wheelchair too', () => {
    const high = room({}, [thing('high')], { access: { wheelchair: true } });
    expect(saidOf(high, 'high')).toContain('note reach/advisory');
    expect(saidOf(high, 'well')).not.toContain('note reach/advisory');
  });

  it('says a check once of a tray that is its subject too, and none that was left', () => {
    const one = finding({ key: 'a', subjects: ['s1', 'm1'], trays: ['m1', 'm2'] });
    const left = finding({ key: 'b', subjects: ['s1'], trays: ['m2'], leftReason: 'agreed' });
    const checks = checksBySubject(report([left, one]));
    expect(checks.get('m1')).toEqual([one]);
    expect(checks.get('m2')).toEqual([one]);
  });
});

import { describe, expect, it } from 'vitest';
import { analyse } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { soundFixes } from '#model/analysis/soundFixes.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { labelParts } from '#model/findings/edit.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

// Invented shelves; what is held is the house's own promise about "Do it".
const sequenceOf = (classroom: ReturnType<typeof plainRoom>) => {
  const { findings } = analyse(classroom);
  return { findings, found: findings.find(({ rule }) => rule === 'order/sequence') };
};
const room = (change: Parameters<typeof plainRoom>[0]) => plainRoom({ pieces: [shelf('a', { boards: 2, width: 1000 })], ...change });

describe('a fix that brings something', () => {
  it('says so before it is done, and brings just that', () => {
    // 310 + 300 + 380 of 1000 mm leave 10 for two gaps of 50, on either board; and m1 is too wide for the place of m2.
    const classroom = room({
      materials: [
        tray('m1', { step: 1, width: 310 }),
        tray('m2', { step: 2, width: 300 }),
        tray('n1', { strand: '', width: 380 }),
        tray('n2', { strand: '', width: 380 }),
      ],
      placements: placed({ 'a-1': ['m2', ['n1', 350]], 'a-2': ['m1', ['n2', 360]] }),
    });
    const { findings, found } = sequenceOf(classroom);
    if (!found?.fix) throw new Error('it is mended');
    const { brings } = labelParts(found.fix.label);
    const after = analyse(applyEdits(classroom, 'a1', found.fix.edits)).findings;
    const before = new Set(findings.map(({ key }) => key));
    const news = after.filter(({ key, outcome }) => outcome === 'problem' && !before.has(key));
    expect(news.length).toBeGreaterThan(0);
    for (const { severity, message } of news) expect(brings).toContain(`a ${severity}: ${message}`);
  });

  it('is passed over for one that brings nothing: the one that comes late moves where the other would crowd a board', () => {
    // m2 behind m1 would have to squeeze on the second board; m1 has room before it on the first.
    const classroom = room({
      materials: [tray('m1', { step: 1, width: 300 }), tray('m2', { step: 2, width: 300 }), tray('n', { strand: '', width: 390 })],
      placements: placed({ 'a-1': ['m2'], 'a-2': ['m1', ['n', 310]] }),
    });
    const { findings, found } = sequenceOf(classroom);
    expect(labelParts(found?.fix?.label ?? '').brings).toBeNull();
    const after = analyse(applyEdits(classroom, 'a1', found?.fix?.edits ?? [])).findings;
    const before = new Set(findings.map(({ key }) => key));
    expect(after.filter(({ key }) => !before.has(key))).toEqual([]);
    expect(after.some(({ rule }) => rule === 'order/sequence')).toBe(false);
  });
});

describe('trying out what a fix does', () => {
  const classroom = room({
    materials: [tray('m1', { step: 1, width: 300 }), tray('m2', { step: 2, width: 300 }), tray('n', { strand: '', width: 390 })],
    placements: placed({ 'a-1': ['m2'], 'a-2': ['m1', ['n', 310]] }),
  });

  it('never looks for mats, which takes longer than all else, where only trays go elsewhere', () => {
    const trial = new RunningAnalysis(false);
    const ran = new Set<string>();
    const { findings } = new RunningAnalysis().analyse(classroom);
    const tries = soundFixes(findings, classroom, 'a1', trial);
    for (let next = tries.next(); !next.done; next = tries.next()) for (const id of trial.ran) ran.add(id);
    expect(ran).toContain('order/sequence');
    for (const id of ['reach/seat', 'floor/mats', 'places/work']) expect(ran).not.toContain(id);
  });

  it('finds just what the checks find, whose fixes it leaves out where they have to be looked for', () => {
    const cut = room({
      materials: ['a1', 'b1', 'a2', 'b2'].map((id) => tray(id, { strand: id.slice(0, 1) })),
      placements: placed({ 'a-1': ['a1', 'b1', 'a2', 'b2'] }),
    });
    const asked = new RunningAnalysis().analyse(cut);
    const tried = new RunningAnalysis(false).analyse(cut);
    const found = ({ findings }: typeof asked) => findings.map(({ fix: _, ...finding }) => finding);
    expect(found(tried)).toEqual(found(asked));
    expect(asked.findings.filter(({ rule, fix }) => rule === 'order/strand' && fix)).toHaveLength(2);
    expect(tried.findings.filter(({ rule, fix }) => rule === 'order/strand' && fix)).toEqual([]);
  });
});

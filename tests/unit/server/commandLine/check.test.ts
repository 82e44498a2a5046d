import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCheck } from '#server/commandLine/check.ts';
import { type PlainRoomChange, plainRoomFile } from '#tests/support/plainRoom.ts';

const house = resolve(import.meta.dirname, '../../../..');
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'check-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Two children, so that the floor suffices; nothing stands in the room. */
const small: PlainRoomChange = {
  children: { groups: [{ id: 'g1', fromMonths: 48, toMonths: 60, count: 2 }] },
  asked: { door_swing: 'count', open_shelf_for_children: 'count', table_chair: 'count', floor_mat: 'count' },
};
/** A wall of boxes across the room with one opening of `width` mm. */
const screen = (width: number): PlainRoomChange => ({
  ...small,
  pieces: [
    { id: 'box1', kind: 'other', x: 1000, y: 2000, width: 2000, depth: 200, height: 900 },
    { id: 'box2', kind: 'other', x: (2000 + width + 6000) / 2, y: 2000, width: 4000 - width, depth: 200, height: 900 },
    {
      id: 's1',
      kind: 'shelf',
      x: 3000,
      y: 4840,
      rotation: 180,
      width: 1200,
      depth: 320,
      height: 700,
      anchored: true,
      levels: [{ id: 'l1', surface: 350 }],
    },
  ],
});

function check(change: PlainRoomChange | string, ...options: string[]) {
  const text = typeof change === 'string' ? change : JSON.stringify(plainRoomFile(change));
  return checkText(text, ...options);
}
function checkText(text: string, ...options: string[]) {
  const file = join(folder, 'room.json');
  writeFileSync(file, text);
  return run(file, ...options);
}
/** The same that `npm run check` runs, without a process for each question. */
async function run(...words: string[]) {
  let [stdout, stderr] = ['', ''];
  const status = await runCheck(words, {
    read: (path) => readFileSync(path, 'utf8'),
    say: (text) => {
      stdout += `${text}\n`;
    },
    complain: (text) => {
      stderr += `${text}\n`;
    },
  });
  return { stdout, stderr, status };
}
/** As a person types it, through npm. */
const typed = (...words: string[]) =>
  spawnSync('npm', ['run', '-s', 'check', '--', ...words], { cwd: house, encoding: 'utf8', timeout: 60_000 });

describe('npm run check', () => {
  it('prints the findings for people and ends with 1 when something must be mended', async () => {
    writeFileSync(join(folder, 'typed.json'), JSON.stringify(plainRoomFile(screen(600))));
    const { stdout, status } = typed(join(folder, 'typed.json'));
    expect(stdout).toContain('Can everyone get through?');
    expect(stdout).toMatch(/must: .*0\.60 m/);
    expect(stdout).toMatch(/needed 0\.711 m/);
    expect(stdout).toContain('your local authority decides');
    expect(status).toBe(1);
  });
  it('prints a report that another program can read, through a pipe', () => {
    writeFileSync(join(folder, 'piped.json'), JSON.stringify(plainRoomFile(screen(600))));
    const piped = spawnSync('sh', ['-c', `npm run -s check -- - --json < ${join(folder, 'piped.json')} | cat`], {
      cwd: house,
      encoding: 'utf8',
    });
    const report = JSON.parse(piped.stdout);
    expect(report).toMatchObject({ format: 'lowshelf.report', version: 1, classroom: 'Plain room', arrangement: 'a1' });
    expect(report.answers['way/width']).toBe('problem');
    const finding = report.findings.find((f: { rule: string }) => f.rule === 'way/width');
    expect(finding).toMatchObject({
      outcome: 'problem',
      severity: 'must',
      measured: { value: 600, unit: 'mm' },
      needed: { value: 711, unit: 'mm' },
      missing: [],
      leftReason: null,
    });
    expect(report.measures.ways[0]).toMatchObject({ from: 'd1', to: 's1', side: 'front', width: 600, judged: 600 });
    expect(Object.keys(report.measures)).toEqual(expect.arrayContaining(['ways', 'narrow', 'mats', 'reach', 'order', 'places']));
  });
  it('ends with 0 when nothing must be mended, and with 1 once --strict and something cannot be told', async () => {
    const unknownDoor = {
      ...small,
      room: { openings: [{ id: 'd1', kind: 'door' as const, from: 'c1', offset: 400, width: 850, swing: 'out-left' as const }] },
    };
    expect((await check(unknownDoor)).status).toBe(0);
    expect((await check(unknownDoor, '--strict')).status).toBe(1);
  });
  it('a must that is left as it is no longer fails', async () => {
    const report = JSON.parse((await check(screen(600), '--json')).stdout);
    const left = report.findings
      .filter((f: { severity: string }) => f.severity === 'must')
      .map((f: { key: string }) => ({ key: f.key, reason: 'the boxes go on Friday', by: 'MK', at: '2026-11-25' }));
    expect(left.length).toBeGreaterThan(0);
    const { stdout, status } = await check({ ...screen(600), left });
    expect(status).toBe(0);
    expect(stdout).toContain('left as it is: the boxes go on Friday');
  });
  it('spends the time it is given on the mats, and says what came of it', async () => {
    // One bare mat's worth of floor, walled off by its own size: exactly one, proved at once.
    const oneMat: PlainRoomChange = {
      ...small,
      floorWork: { mat: { width: 5990, depth: 4990 }, gap: 0, wanted: 1 },
    };
    expect((await check(oneMat, '--prove', '5')).stdout).toMatch(/Mats: exactly 1, proved in \d/);
    const { stdout, status } = await check(screen(600), '--prove', 'soon');
    expect([stdout, status]).toEqual(['', 2]);
  });
  it('says feet and inches when asked', async () => {
    expect((await check(screen(600), '--units', 'imperial')).stdout).toContain(`1' 11 5/8"`);
  });
  it.each<[string, string[], string, RegExp]>([
    ['a file that is not there', [], 'nowhere.json', /nowhere\.json: cannot be opened/],
    ['no file', [], '', /Say which classroom file/],
    ['an unknown option', ['--fast'], 'room.json', /--fast/],
    ['other units', ['--units', 'cubits'], 'room.json', /metric or imperial, found "cubits"/],
    ['half a way', ['--way', 'd1'], 'room.json', /FROM:TO, found "d1"/],
    ['a way to nothing', ['--way', 'd1:sofa'], 'room.json', /no door, piece or fixture "sofa"/],
    ['an arrangement that is not there', ['--arrangement', 'b9'], 'room.json', /no arrangement "b9". There is: a1 \(As it stands\)/],
  ])('ends with 2 and says why: %s', async (_, options, name, words) => {
    writeFileSync(join(folder, 'room.json'), JSON.stringify(plainRoomFile(small)));
    const { stderr, stdout, status } = await run(...(name === '' ? [] : [join(folder, name)]), ...options);
    expect(status).toBe(2);
    expect(stderr).toMatch(words);
    expect(stdout).toBe('');
  });
  it('names the path, what was found and what was expected in a file it cannot read', async () => {
    const file = plainRoomFile(small);
    const spoiled = { ...file, room: { ...file.room, corners: [{ id: 'c1', x: 'left', y: 0 }] } };
    const { stderr, status } = await checkText(JSON.stringify(spoiled));
    expect(status).toBe(2);
    expect(stderr).toContain('room.corners[0].x: found "left", expected a number.');
  });
});

describe('npm run check, typed', () => {
  it('ends with 2 and complains on the error stream alone', () => {
    const { stderr, stdout, status } = typed('nowhere.json');
    expect([stdout, status]).toEqual(['', 2]);
    expect(stderr).toMatch(/nowhere\.json: cannot be opened/);
  });
});

describe('npm run check -- --way', () => {
  it('prints how wide a disc can travel, where, and the shortest walk', async () => {
    // Hand geometry: a straight line from (3000,1000) to (3000,3000) runs through the opening of 2000 to 2900 + 200.
    const { stdout, status } = await check(screen(1100), '--way', '2500,1000:2500,3000', '--body', '300');
    expect(JSON.parse(stdout)).toEqual({
      width: 1100,
      at: { x: 2550, y: expect.any(Number) },
      between: [
        { id: expect.stringMatching(/^box[12]$/), x: expect.any(Number), y: expect.any(Number) },
        { id: expect.stringMatching(/^box[12]$/), x: expect.any(Number), y: expect.any(Number) },
      ],
      walk: 2000,
    });
    expect(status).toBe(0);
  });
  it('takes ids of doors and pieces, and says 0 and no place where there is no way', async () => {
    const open = JSON.parse((await check(screen(600), '--way', 'd1:s1')).stdout);
    expect(open.width).toBe(600);
    const shut = JSON.parse((await check(screen(0), '--way', 'd1:s1')).stdout);
    expect(shut).toEqual({ width: 0, between: [], walk: null });
  });

  it('lists what was left as it is, with the reason, and says what no longer does anything', async () => {
    const file = plainRoomFile(screen(600));
    const key = 'way/width:s1+d1#front';
    const left = [
      { key, reason: 'the boxes go on Monday', by: 'MK', at: '2026-11-25' },
      { key: 'steady/overlap:box1+box2', reason: 'as agreed', by: '', at: '' },
    ];
    const { stdout } = await checkText(JSON.stringify({ ...file, left }));
    expect(stdout).toMatch(/\(left as it is: the boxes go on Monday\)/);
    expect(stdout).toMatch(/Left as they are:\n {2}"the boxes go on Monday", left by MK on 2026-11-25: The way from .*\n/);
    expect(stdout).toMatch(
      /"as agreed", left by somebody who gave no name: steady\/overlap:box1\+box2\n {6}This no longer does anything: take it away\./,
    );
    const report = JSON.parse((await checkText(JSON.stringify({ ...file, left }), '--json')).stdout);
    expect(report.left).toEqual([
      { ...left[0], does: 'here' },
      { ...left[1], does: 'nothing' },
    ]);
  });

  it('looks for the smallest move that widens every way', async () => {
    // 32 in of a short gap (A02): 812.8 less 700, in whole mm 113.
    const room: PlainRoomChange = {
      ...screen(700),
      pieces: (screen(700).pieces ?? []).map((p) => (p.id === 'box1' ? { ...p, x: 1150, width: 1700 } : p)),
    };
    const { stdout, status } = await check(room, '--mend');
    expect(stdout).toMatch(
      /^Move one piece, 0\.113 m in all, and every way is wide enough\. No new must comes with it\.\n {2}Thing box1: 0\.113 m towards the west wall/,
    );
    expect(status).toBe(0);
    const json = JSON.parse((await check(room, '--mend', '--json')).stdout);
    expect(json).toMatchObject({ end: 'found', total: 113, edits: [{ do: 'move-piece', piece: 'box1', x: 1037, y: 2000 }] });
    const kept = await check(room, '--mend', '--keep', 'box1,box2');
    expect(kept.stdout).toMatch(/^Nothing was found/);
    expect(kept.status).toBe(1);
    expect((await check(room, '--mend', '--keep', 'nobody')).stderr).toMatch(/no piece "nobody" in arrangement a1/);
    expect((await check(room, '--mend', '--must', '--narrowest')).stderr).toMatch(/--must and --narrowest are asked one at a time/);
    expect((await check(room, '--keep', 'box1')).stderr).toMatch(/--keep goes with --mend/);
  });
});

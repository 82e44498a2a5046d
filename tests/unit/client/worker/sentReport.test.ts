import { describe, expect, it } from 'vitest';
import { reportReader, reportSender, type SentReport } from '#client/worker/sentReport.ts';
import { analyse } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { benchRoom } from '#tests/bench/benchRoom.ts';
import { finding, report } from '../checks/finding.ts';

/** As the browser posts it: always a copy. */
function posting() {
  const [send, read] = [reportSender(), reportReader()];
  const posts: SentReport[] = [];
  return {
    posts,
    post: (whole: Parameters<typeof send>[0]) => {
      const sent = structuredClone(send(whole));
      posts.push(sent);
      return read(sent);
    },
  };
}

describe('a report on its way to the page', () => {
  it('arrives as it was sent, however it changes', () => {
    const { post } = posting();
    const [a, b, c] = ['a', 'b', 'c'].map((key) => finding({ key, message: key }));
    if (!a || !b || !c) throw new Error('three findings');
    const steps = [
      { findings: [a, b], measures: { ways: [{ width: 1 }, { width: 2 }], reach: { highest: 3 }, order: [] } },
      { findings: [a, b], measures: { ways: [{ width: 1 }, { width: 2 }], reach: { highest: 3 }, order: [] } },
      { findings: [c, a], measures: { ways: [{ width: 2 }, { width: 5 }, { width: 2 }], reach: { highest: 4 } } },
      { findings: [{ ...c, message: 'other' }, b], measures: { ways: [], reach: [1, 2], order: [{ strand: 'x' }] } },
      { findings: [], measures: {} },
      { findings: [b], measures: { ways: [{ width: 2 }], reach: [1, 2], order: [{ strand: 'x' }, { strand: 'y' }] } },
    ];
    for (const step of steps) expect(post({ ...report([]), ...step })).toEqual({ ...report([]), ...step });
  });

  it('names what the page has, and the page keeps the very objects', () => {
    const { post, posts } = posting();
    const whole = {
      ...report([finding({ key: 'a' }), finding({ key: 'b' })]),
      measures: { ways: [{ width: 1 }, { width: 2 }], reach: { at: 1 } },
    };
    const first = post(whole);
    const second = post(structuredClone(whole));
    expect(posts[1]).toMatchObject({ findings: [0, 1], measures: {}, again: { ways: 'same', reach: 'same' } });
    expect(second.findings).toBe(first.findings);
    expect(second.measures.ways).toBe(first.measures.ways);
    const third = post({ ...whole, findings: [...whole.findings].reverse(), measures: { ways: [{ width: 3 }, { width: 2 }] } });
    expect(posts[2]).toMatchObject({ findings: [1, 0], again: { ways: [{ width: 3 }, 1] } });
    expect(third.findings[0]).toBe(first.findings[1]);
    expect((third.measures.ways as object[])[1]).toBe((first.measures.ways as object[])[1]);
  });

  it('says of a drag through a room of 60 pieces what the analyser says', () => {
    const { post } = posting();
    const running = new RunningAnalysis();
    const room = benchRoom('bench-60');
    const arrangement = room.arrangements[0];
    const shelf = arrangement?.pieces.find(({ kind }) => kind === 'shelf');
    if (!arrangement || !shelf) throw new Error('the room has a shelf');
    for (let step = 0; step < 6; step++) {
      const moved = applyEdits(room, arrangement.id, [{ do: 'move-piece', piece: shelf.id, x: shelf.x + step * 90, y: shelf.y }]);
      expect(post(running.analyse(moved, { tiers: ['live'] }))).toEqual(JSON.parse(JSON.stringify(analyse(moved, { tiers: ['live'] }))));
    }
  });
});

import { judgeRule, type Report } from '#model/analysis/report.ts';
import { reportMats } from '#model/measures/mats.ts';
import { type Measures, measuresOf } from '#model/measures/measures.ts';
import { reportNarrow, reportWays } from '#model/measures/reportWays.ts';
import { reportSight } from '#model/measures/sight.ts';
import { type PlainRoomChange, plainRoom } from '#model/rules/plainRoom.ts';
import { rules } from '#model/rules/registry.ts';
import type { Rule } from '#model/rules/rule.ts';
import { buildScene } from '#model/scene/build.ts';
import type { JudgedRoom, PageAnswer, PageFailure, PageQuestion } from './messages.ts';

/** Judges the rooms of one rule's page, as that rule judges any room. */
export function judgePage({ rule: id, rooms }: PageQuestion): PageAnswer | PageFailure {
  const rule = rules.find((candidate) => candidate.id === id);
  if (!rule) return { rule: id, failure: 'This version has no check of that name.' };
  try {
    const judged = rooms.map((change) => judgeRoom(rule, change));
    return { rule: id, sources: rule.sources, defaults: rule.options.parse({}), rooms: judged };
  } catch (error) {
    return { rule: id, failure: `The two rooms could not be judged (${error instanceof Error ? error.message : String(error)}).` };
  }
}

function judgeRoom(rule: Rule, change: PlainRoomChange): JudgedRoom {
  const classroom = plainRoom(change);
  const scene = buildScene(classroom);
  const measures = measuresOf(scene);
  const { answer, findings } = judgeRule(rule, scene, measures);
  return {
    classroom,
    report: {
      format: 'lowshelf.report',
      version: 1,
      classroom: classroom.name,
      arrangement: scene.arrangement.id,
      answers: { [rule.id]: answer },
      findings,
      measures: drawnMeasures(rule.id, measures),
    },
  };
}

/** Only what the drawing of such a room shows. */
function drawnMeasures(rule: string, measures: Measures): Report['measures'] {
  if (rule.startsWith('floor/')) return { mats: reportMats(measures.mats()) };
  if (rule === 'sight/hidden') return { sight: reportSight(measures.sight()) };
  if (rule === 'way/width' || rule === 'way/narrow') {
    const ways = measures.ways();
    return { ways: reportWays(ways.exact()), narrow: reportNarrow(ways) };
  }
  return {};
}

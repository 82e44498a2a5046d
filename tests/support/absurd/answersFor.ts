import { analyse, type Report } from '#model/analysis/report.ts';
import { measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { rules } from '#model/rules/registry.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

/** Asks that need floor: with walls that do not hold they cannot be told, whatever else the file says. */
const needFloor = /^(way|sight)\/(?!door$)|^floor\/half$|^exit\/(blocked|far)$|^places\/area$/;
/** What a slip in a message would show. */
const unsaid = /\bNaN\b|\bundefined\b|\bInfinity\b|\[object /;

/** What is wrong with how a file is answered; empty: read and judged, or refused in plain words. Throws what the model throws. */
export function wrongAnswersFor(file: unknown, isThorough: boolean): string[] {
  const read = readClassroom(file);
  return read.ok ? wrongAnswers(read.classroom, isThorough) : wrongRefusal(read.problems);
}

/** @param isThorough look for mats as long as the app does; else as long as a drag allows */
export function wrongAnswers(classroom: Classroom, isThorough: boolean): string[] {
  const scene = buildScene(classroom);
  const report = analyse(classroom, isThorough ? {} : { mats: measureMats(scene, seatStrips(scene), 'quick') });
  const wrong = rules.filter(({ id }) => report.answers[id] === undefined).map(({ id }) => `${id} does not answer`);
  if (!scene.room.isSound)
    for (const [id, answer] of Object.entries(report.answers))
      if (needFloor.test(id) && answer !== 'cannot-tell' && answer !== 'does-not-apply')
        wrong.push(`${id} is ${answer} within walls that do not hold`);
  return [...wrong, ...wrongFindings(report), ...notNumbers('report', report)];
}

function wrongFindings({ findings }: Report): string[] {
  return findings.flatMap(({ key, outcome, message, missing, why }) => {
    const said = [message, why, ...missing].find((text) => text.trim() === '' || unsaid.test(text));
    if (said !== undefined) return [`${key} says "${said}"`];
    return outcome === 'cannot-tell' && missing.length === 0 ? [`${key} cannot tell and does not say what is missing`] : [];
  });
}

export function wrongRefusal(problems: readonly { path: string; found: string; expected: string }[]): string[] {
  if (problems.length === 0) return ['it is refused without a reason'];
  return problems.flatMap(({ path, found, expected }) =>
    [path, found, expected].some((text) => text.trim() === '') || /undefined|\[object /.test(path + expected)
      ? [`refused with "${path}", "${found}", "${expected}"`]
      : [],
  );
}

/** Where in a report a number is none. */
function notNumbers(path: string, value: unknown): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notNumbers(`${path}.${key}`, inner));
}

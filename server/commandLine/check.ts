import { analyse, type Report } from '#model/analysis/report.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { type CheckArguments, readArguments, usage } from './arguments.ts';
import { proveMats, sayProof } from './proveMats.ts';
import { sayMends } from './sayMends.ts';
import { sayReport } from './sayReport.ts';
import { sayWay } from './sayWay.ts';

/** Exit statuses of classroom-format: nothing must be mended; something must; the file could not be read. 3: the check itself broke. */
export const status = { fine: 0, must: 1, unreadable: 2, broken: 3 } as const;

/** Where the check reads and writes, so that it can be asked without a terminal. */
export interface Terminal {
  /** The text of a file, or of standard input for `-`. @throws when it cannot be opened */
  read(file: string): string;
  say(text: string): void;
  /** What stops the check goes here. */
  complain(text: string): void;
}

/** Runs the check as it is typed. @param argv the words after `npm run check --` @returns the exit status */
export async function runCheck(argv: readonly string[], terminal: Terminal): Promise<number> {
  const said = tryArguments(argv, terminal);
  if (said === null) return status.unreadable;
  if (said === 'help') {
    terminal.say(usage);
    return status.fine;
  }
  const classroom = readClassroomAt(said.file, terminal);
  if (!classroom) return status.unreadable;
  if (said.arrangement !== null && !classroom.arrangements.some((a) => a.id === said.arrangement))
    return refuse(
      terminal,
      `${said.file}: no arrangement "${said.arrangement}". There is: ${classroom.arrangements.map((a) => `${a.id} (${a.name})`).join(', ')}.`,
    );
  if (said.mend) return lookForMend(classroom, said, said.mend, terminal);
  return said.way ? checkWay(classroom, said, said.way, terminal) : check(classroom, said, terminal);
}

function tryArguments(argv: readonly string[], terminal: Terminal): CheckArguments | 'help' | null {
  try {
    return readArguments(argv);
  } catch (error) {
    refuse(terminal, `${(error as Error).message}\n\n${usage}`);
    return null;
  }
}

async function check(classroom: Classroom, said: CheckArguments, terminal: Terminal): Promise<number> {
  const units = said.units ?? classroom.display.units;
  const shown = { ...classroom, display: { ...classroom.display, units } };
  const proof = said.prove === null ? null : await proveMats(shown, said.arrangement, said.prove);
  const report = analyse(shown, { arrangement: said.arrangement, ...(proof && { mats: proof.mats }) });
  terminal.say(said.json ? JSON.stringify(report, null, 2) : sayReport(report, units));
  if (proof && !said.json) terminal.say(sayProof(proof));
  return isFailing(report, said.strict) ? status.must : status.fine;
}

function isFailing(report: Report, strict: boolean): boolean {
  const open = report.findings.filter((finding) => finding.leftReason === null);
  return open.some((f) => (f.outcome === 'problem' && f.severity === 'must') || (strict && f.outcome === 'cannot-tell'));
}

function checkWay(classroom: Classroom, said: CheckArguments, way: NonNullable<CheckArguments['way']>, terminal: Terminal): number {
  const answer = sayWay(classroom, said.arrangement, way);
  if (!answer.ok) return refuse(terminal, `${said.file}: ${answer.why}`);
  terminal.say(JSON.stringify(answer.way, null, 2));
  return status.fine;
}

function lookForMend(classroom: Classroom, said: CheckArguments, asked: NonNullable<CheckArguments['mend']>, terminal: Terminal): number {
  const units = said.units ?? classroom.display.units;
  const answer = sayMends({ ...classroom, display: { ...classroom.display, units } }, said.arrangement, asked);
  if (!answer.ok) return refuse(terminal, `${said.file}: ${answer.why}`);
  terminal.say(said.json ? JSON.stringify(answer.json, null, 2) : answer.text);
  return answer.isWide ? status.fine : status.must;
}

/** Says on the error stream what stops the check. */
function refuse(terminal: Terminal, text: string): number {
  terminal.complain(text);
  return status.unreadable;
}

function readClassroomAt(file: string, terminal: Terminal): Classroom | null {
  let text: string;
  try {
    text = terminal.read(file);
  } catch (error) {
    refuse(terminal, `${file}: cannot be opened (${(error as Error).message}).`);
    return null;
  }
  const read = readClassroomFile(text);
  if (read.ok) return read.classroom;
  for (const problem of read.problems.slice(0, 20))
    refuse(terminal, `${file}: ${problem.path}: found ${problem.found}, expected ${problem.expected}.`);
  if (read.problems.length > 20) refuse(terminal, `${file}: and ${read.problems.length - 20} more.`);
  return null;
}

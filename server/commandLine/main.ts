import { readFileSync } from 'node:fs';
import { analyse, type Report } from '#model/analysis/report.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { type CheckArguments, readArguments, usage } from './arguments.ts';
import { proveMats, sayProof } from './proveMats.ts';
import { sayMends } from './sayMends.ts';
import { sayReport } from './sayReport.ts';
import { sayWay } from './sayWay.ts';

/** Exit statuses of classroom-format: nothing must be mended; something must; the file could not be read. 3: the check itself broke. */
const status = { fine: 0, must: 1, unreadable: 2, broken: 3 } as const;

// A reader that has seen enough (`| head`) closes the pipe; that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`The check itself broke; nothing is said of the room. ${(error as Error).stack ?? error}\n`);
  process.exitCode = status.broken;
}

async function run(argv: readonly string[]): Promise<number> {
  const said = tryArguments(argv);
  if (said === null) return status.unreadable;
  if (said === 'help') {
    write(usage);
    return status.fine;
  }
  const classroom = readClassroomAt(said.file);
  if (!classroom) return status.unreadable;
  if (said.arrangement !== null && !classroom.arrangements.some((a) => a.id === said.arrangement))
    return refuse(
      `${said.file}: no arrangement "${said.arrangement}". There is: ${classroom.arrangements.map((a) => `${a.id} (${a.name})`).join(', ')}.`,
    );
  if (said.mend) return lookForMend(classroom, said, said.mend);
  return said.way ? checkWay(classroom, said, said.way) : check(classroom, said);
}

function tryArguments(argv: readonly string[]): CheckArguments | 'help' | null {
  try {
    return readArguments(argv);
  } catch (error) {
    refuse(`${(error as Error).message}\n\n${usage}`);
    return null;
  }
}

async function check(classroom: Classroom, said: CheckArguments): Promise<number> {
  const units = said.units ?? classroom.display.units;
  const shown = { ...classroom, display: { ...classroom.display, units } };
  const proof = said.prove === null ? null : await proveMats(shown, said.arrangement, said.prove);
  const report = analyse(shown, { arrangement: said.arrangement, ...(proof && { mats: proof.mats }) });
  write(said.json ? JSON.stringify(report, null, 2) : sayReport(report, units));
  if (proof && !said.json) write(sayProof(proof));
  return isFailing(report, said.strict) ? status.must : status.fine;
}

function isFailing(report: Report, strict: boolean): boolean {
  const open = report.findings.filter((finding) => finding.leftReason === null);
  return open.some((f) => (f.outcome === 'problem' && f.severity === 'must') || (strict && f.outcome === 'cannot-tell'));
}

function checkWay(classroom: Classroom, said: CheckArguments, way: NonNullable<CheckArguments['way']>): number {
  const answer = sayWay(classroom, said.arrangement, way);
  if (!answer.ok) return refuse(`${said.file}: ${answer.why}`);
  write(JSON.stringify(answer.way, null, 2));
  return status.fine;
}

function lookForMend(classroom: Classroom, said: CheckArguments, asked: NonNullable<CheckArguments['mend']>): number {
  const units = said.units ?? classroom.display.units;
  const answer = sayMends({ ...classroom, display: { ...classroom.display, units } }, said.arrangement, asked);
  if (!answer.ok) return refuse(`${said.file}: ${answer.why}`);
  write(said.json ? JSON.stringify(answer.json, null, 2) : answer.text);
  return answer.isWide ? status.fine : status.must;
}

/** Says on the error stream what stops the check. */
function refuse(text: string): number {
  process.stderr.write(`${text}\n`);
  return status.unreadable;
}

function readClassroomAt(file: string): Classroom | null {
  let text: string;
  try {
    text = readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    refuse(`${file}: cannot be opened (${(error as Error).message}).`);
    return null;
  }
  const read = readClassroomFile(text);
  if (read.ok) return read.classroom;
  for (const problem of read.problems.slice(0, 20))
    refuse(`${file}: ${problem.path}: found ${problem.found}, expected ${problem.expected}.`);
  if (read.problems.length > 20) refuse(`${file}: and ${read.problems.length - 20} more.`);
  return null;
}

function write(text: string): void {
  process.stdout.write(`${text}\n`);
}

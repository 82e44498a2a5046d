import { z } from 'zod';
import { classroom as classroomSchema, FORMAT, VERSION } from './classroom.ts';
import { limits } from './limits.ts';
import { migrate } from './migrations.ts';
import type { Classroom } from './types.ts';

/** What is wrong with a file, where, and what would be right. */
export interface FileProblem {
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}
export type ReadClassroom =
  | { ok: true; classroom: Classroom }
  /** `torn`: the file where only single things of it cannot be read, brought up to this version; see `withTornEntries` */
  | { ok: false; problems: readonly FileProblem[]; torn?: Torn };

export interface Torn {
  readonly file: unknown;
  readonly issues: readonly (readonly PropertyKey[])[];
}

/** Reads the text of a classroom file. Never throws; an unreadable file changes nothing. */
export function readClassroomFile(text: string): ReadClassroom {
  const bytes = utf8Bytes(text);
  if (bytes > limits.fileBytes) return refuse('(file)', `${(bytes / 1048576).toFixed(1)} MB`, `at most ${limits.fileBytes / 1048576} MB`);
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return refuse('(file)', sayNoJson(text), `JSON (${(error as Error).message})`);
  }
  return readClassroom(json);
}

/** Reads a classroom from plain JSON. Unknown keys are kept. */
export function readClassroom(json: unknown): ReadClassroom {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return refuse('(file)', say(json), 'a JSON object');
  const file = json as Record<string, unknown>;
  if (file.format !== FORMAT) return refuse('format', say(file.format), `"${FORMAT}"`);
  const version = file.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse('version', say(version), `a whole number, 1 to ${VERSION}`);
  if (version > VERSION)
    return refuse('version', String(version), `at most ${VERSION}: the file comes from a newer Lowshelf, update this one to open it`);
  const migrated = migrate(file, version);
  if (migrated.stuckAt !== null) return refuse('version', String(version), `a version that can be brought up to ${VERSION}`);
  const parsed = classroomSchema.safeParse(migrated.file);
  if (!parsed.success) {
    const { issues } = parsed.error;
    const torn = { file: migrated.file, issues: issues.map((issue) => issue.path) };
    return { ok: false, problems: issues.map((issue) => toProblem(issue, migrated.file)), torn };
  }
  return { ok: true, classroom: parsed.data };
}

/** A copy that was ended early begins as a classroom and is no JSON. */
export const BROKEN_OFF = 'a classroom file that breaks off';

function sayNoJson(text: string): string {
  if (text.trim() === '') return 'an empty file';
  return text.trimStart().startsWith('{') && text.includes(`"${FORMAT}"`) ? BROKEN_OFF : 'text that is no JSON';
}

function utf8Bytes(text: string): number {
  let bytes = text.length;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    // A surrogate pair is two units and four bytes, so each half adds one.
    if (unit > 0x7f) bytes += unit > 0x7ff && (unit < 0xd800 || unit > 0xdfff) ? 2 : 1;
  }
  return bytes;
}

function refuse(path: string, found: string, expected: string): ReadClassroom {
  return { ok: false, problems: [{ path, found, expected }] };
}

export function toProblem(issue: z.core.$ZodIssue, file: unknown): FileProblem {
  const deepest = issue.code === 'invalid_union' ? deepestOf(issue) : issue;
  return { path: sayPath(deepest.path), found: say(valueAt(file, deepest.path)), expected: sayExpected(deepest) };
}

/** Of a union's branches the one that got furthest says most. */
function deepestOf(issue: z.core.$ZodIssueInvalidUnion): z.core.$ZodIssue {
  let best: z.core.$ZodIssue | null = null;
  for (const branch of issue.errors) for (const inner of branch) if (!best || inner.path.length > best.path.length) best = inner;
  if (!best || best.path.length === 0) return issue;
  return { ...best, path: [...issue.path, ...best.path] } as z.core.$ZodIssue;
}

function sayExpected(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `a ${issue.expected}`;
    case 'invalid_value':
      return issue.values.map((value) => JSON.stringify(value)).join(' or ');
    case 'too_small':
      return `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}${sayOrigin(issue.origin)}`;
    case 'too_big':
      return `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}${sayOrigin(issue.origin)}`;
    default:
      return issue.message;
  }
}

function sayOrigin(origin: string): string {
  if (origin === 'array') return ' entries';
  return origin === 'string' ? ' characters' : '';
}

function sayPath(path: readonly PropertyKey[]): string {
  if (path.length === 0) return '(file)';
  return path.map((key, index) => (typeof key === 'number' ? `[${key}]` : `${index === 0 ? '' : '.'}${String(key)}`)).join('');
}

function valueAt(file: unknown, path: readonly PropertyKey[]): unknown {
  let value = file;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

function say(value: unknown): string {
  if (value === undefined) return 'nothing';
  const json = JSON.stringify(value) ?? String(value);
  return json.length > 80 ? `${json.slice(0, 77)}…` : json;
}

/** The text of a classroom file, two-space indented, unknown keys included. */
export function writeClassroomFile(classroom: Classroom): string {
  return `${JSON.stringify(classroom, null, 2)}\n`;
}

/** The JSON Schema of a classroom file as it may be written (defaults left out). */
export function classroomJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(classroomSchema, { io: 'input', unrepresentable: 'any' }) as Record<string, unknown>;
}

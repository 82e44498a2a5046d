import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { viewIdOf } from '#model/document/viewId.ts';
import type { Entry, Storage } from './storage.ts';

const SCHEMA_VERSION = 1;
const SCHEMA = `
  CREATE TABLE classroom (id TEXT PRIMARY KEY, view TEXT NOT NULL UNIQUE, snapshot BLOB) WITHOUT ROWID;
  CREATE TABLE logged (number INTEGER PRIMARY KEY AUTOINCREMENT, classroom TEXT NOT NULL, bytes BLOB NOT NULL);
  CREATE INDEX logged_of ON logged (classroom, number);
`;

/** The data folder is in use, or was written by a newer server. The message is for people. */
export class CannotOpen extends Error {
  override name = 'CannotOpen';
}

export interface SqliteOptions {
  /** Pages of 4 KiB that the file may have; absent: as many as the disk holds. */
  readonly mostPages?: number;
}

/**
 * One SQLite file. WAL with synchronous FULL: a commit that returned survives a power cut.
 * @throws CannotOpen when another server has the file, or a newer one wrote it.
 */
export function sqliteStorage(file: string, options: SqliteOptions = {}): Storage {
  mkdirSync(dirname(file), { recursive: true });
  const database = open(file);
  if (options.mostPages !== undefined) database.pragma(`max_page_count = ${options.mostPages}`);
  const read = {
    snapshot: database.prepare<[string], { snapshot: Buffer | null }>('SELECT snapshot FROM classroom WHERE id = ?'),
    logged: database.prepare<[string], { number: number; bytes: Buffer }>(
      'SELECT number, bytes FROM logged WHERE classroom = ? ORDER BY number',
    ),
    view: database.prepare<[string], { id: string }>('SELECT id FROM classroom WHERE view = ?'),
  };
  const write = {
    classroom: database.prepare('INSERT OR IGNORE INTO classroom (id, view) VALUES (?, ?)'),
    update: database.prepare('INSERT INTO logged (classroom, bytes) VALUES (?, ?)'),
    snapshot: database.prepare('UPDATE classroom SET snapshot = ? WHERE id = ?'),
    forget: database.prepare('DELETE FROM logged WHERE classroom = ? AND number <= ?'),
  };
  const known = new Set<string>();
  const know = (id: string): void => {
    if (!known.has(id)) write.classroom.run(id, viewIdOf(id));
  };
  const commit = database.transaction((entries: readonly Entry[]) => {
    for (const { classroom, update } of entries) {
      know(classroom);
      write.update.run(classroom, update);
    }
  });
  const replace = database.transaction((id: string, state: Uint8Array, upTo: number) => {
    know(id);
    write.snapshot.run(state, id);
    write.forget.run(id, upTo);
  });

  return {
    load: async (id) => {
      const rows = read.logged.all(id);
      const snapshot = read.snapshot.get(id)?.snapshot ?? null;
      return { snapshot, updates: rows.map(({ bytes }) => bytes), last: rows.at(-1)?.number ?? 0 };
    },
    commit: async (entries) => {
      commit.immediate(entries);
      // Only after the commit: what was rolled back is not known.
      for (const { classroom } of entries) known.add(classroom);
    },
    replace: async (id, state, upTo) => replace.immediate(id, state, upTo),
    ofView: async (view) => read.view.get(view)?.id ?? null,
    close: async () => {
      database.close();
    },
  };
}

function open(file: string): Database.Database {
  const database = new Database(file, { timeout: 200 });
  try {
    // One server a file: two would not hear of each other's changes.
    database.pragma('locking_mode = EXCLUSIVE');
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    const version = Number(database.pragma('user_version', { simple: true }));
    if (version > SCHEMA_VERSION)
      throw new CannotOpen(`${file} was written by a newer Lowshelf. Update this one, or set DATA to another folder.`);
    if (version === 0)
      database.transaction(() => {
        database.exec(SCHEMA);
        database.pragma(`user_version = ${SCHEMA_VERSION}`);
      })();
    return database;
  } catch (error) {
    database.close();
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY'))
      throw new CannotOpen(`Another Lowshelf server already uses ${file}. Stop it first, or set DATA to another folder.`);
    throw error;
  }
}

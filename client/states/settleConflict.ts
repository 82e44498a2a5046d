import type { Version } from '#model/document/version.ts';
import { nameOfCopy } from '../plan/numbers.ts';
import { type Conflict, conflictsOf, isWhole } from '../session/conflicts.ts';
import type { Session } from '../session/types.ts';
import { sayConflict, sayWho } from './sayConflict.ts';

/** A piece or fixture that stands in both versions: then there can be two of it. */
export function canKeepBoth({ path, fields }: Conflict): boolean {
  const isThing =
    (path[0] === 'arrangements' && path[2] === 'pieces' && path.length === 4) || (path[0] === 'fixtures' && path.length === 2);
  return isThing && Object.values(fields).every(({ theirs }) => theirs !== null);
}

/** As it was here. @returns whether it could be written; what it belonged to may be gone */
function putMine(session: Session, { path, fields }: Conflict): boolean {
  const mine = Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, field.mine]));
  return session.commands.setBack(path, mine);
}

/** One step to take back, however many. */
export function keepMine(session: Session, conflicts: readonly Conflict[]): void {
  session.undo.beginStep();
  const gone = conflicts.filter((conflict) => !putMine(session, conflict));
  session.undo.endStep();
  // What could not be put back stays listed: it is nowhere else any more.
  settled(
    session,
    conflicts.filter((conflict) => !gone.includes(conflict)),
  );
  const [first] = gone;
  if (first)
    session.announce(
      `${sayConflict(session, first).title}. What it belonged to is gone, so it could not be put back${
        gone.length > 1 ? `, nor ${gone.length === 2 ? 'one more' : `${gone.length - 1} more`}` : ''
      }. It stays listed; “Keep theirs” lays it aside.`,
    );
  else
    session.announce(
      conflicts.length === 1 ? 'Yours is kept. Take back brings theirs again.' : 'Yours are kept. Take back brings theirs again.',
    );
}

/** Theirs stands already: nothing is written, so there is nothing to take back. */
export function keepTheirs(session: Session, conflicts: readonly Conflict[]): void {
  settled(session, conflicts);
  const [first] = conflicts;
  session.announce(first && conflicts.length === 1 ? `What ${sayWho(first)} did is kept.` : 'What the others did is kept.');
}

/** A second one, as it was here, beside the one that stands: its id is taken, so it gets one of its own. */
export function keepBoth(session: Session, conflict: Conflict): void {
  const [root, id, , of] = conflict.path;
  const { arrangements, room } = session.classroom();
  const mine = Object.fromEntries(
    Object.entries(conflict.fields).flatMap(([key, field]) => (isWhole(field) ? [] : [[key, plain(field.mine)]])),
  );
  let made = '';
  if (root === 'fixtures') {
    const fixture = room.fixtures.find((one) => one.id === id);
    if (fixture) made = session.commands.addFixture({ ...fixture, ...mine });
  } else {
    const arrangement = arrangements.find((one) => one.id === id);
    const piece = arrangement?.pieces.find((one) => one.id === of);
    if (piece && arrangement)
      made = session.commands.addPiece(arrangement.id, {
        ...piece,
        ...mine,
        number: undefined,
        name: nameOfCopy(session.classroom(), piece),
      });
  }
  if (made === '') {
    session.announce('It is gone meanwhile, so there cannot be two of it. Yours can still be kept.');
    return;
  }
  settled(session, [conflict]);
  session.announce('Both stand now. Trays stay on the first. Take back takes the second away.');
}

const plain = (version: Version): unknown => ('value' in version ? version.value : undefined);

const settled = (session: Session, conflicts: readonly Conflict[]): void => conflictsOf(session).settle(conflicts.map(({ key }) => key));

import type { Session } from '#client/session/types.ts';
import { measureOutside } from '#model/measures/outside.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom, Room } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { nameOfFixture, nameOfOpening } from '../plan/describe.ts';
import { wallLength } from '../plan/roomShape.ts';
import type { LaidRoom } from './laidRoom.ts';

/** Walls, what was taped, doors, windows and fixtures: one step to take back. */
export function writeSurvey(session: Session, { room }: LaidRoom): void {
  const { commands, undo } = session;
  const before = session.classroom().room;
  undo.beginStep();
  commands.setCorners(room.corners);
  commands.changeRoom({ survey: room.survey });
  for (const opening of room.openings) {
    const was = before.openings.find(({ id }) => id === opening.id);
    if (!was) commands.addOpening(opening);
    else commands.changeOpening(opening.id, differs(was, opening));
  }
  for (const fixture of room.fixtures) {
    const was = before.fixtures.find(({ id }) => id === fixture.id);
    if (!was) commands.addFixture(fixture);
    else commands.changeFixture(fixture.id, differs(was, fixture));
  }
  undo.endStep();
}

/** The fields that changed: what somebody else changes meanwhile in the others is left alone. */
function differs<T extends { id: string }>(was: T, now: T): Partial<Omit<T, 'id'>> {
  return Object.fromEntries(Object.entries(now).filter(([key, value]) => key !== 'id' && was[key as keyof T] !== value)) as Partial<
    Omit<T, 'id'>
  >;
}

/** What will not fit once the walls stand so, in words; pieces of the arrangement that is shown. */
export function whatNoLongerFits(classroom: Classroom, arrangement: string, { room, moved, unwalled, unplaced }: LaidRoom): string[] {
  const { units } = classroom.display;
  const isKnown = (id: string): boolean => classroom.room.fixtures.some((one) => one.id === id);
  const words: string[] = [];
  for (const opening of room.openings) {
    if (moved.includes(opening.id)) words.push(`${nameOfOpening(opening)}: its wall is gone, it went to the nearest one.`);
    if (unwalled.includes(opening.id))
      words.push(`${nameOfOpening(opening)}: its wall has no length yet, so it stands on the last one that has. Choose its wall.`);
    const long = wallLength(room.corners, opening.from);
    const past = long === null ? 0 : opening.offset + opening.width - long;
    if (past > 1) words.push(`${nameOfOpening(opening)} reaches ${sayLength(past, units)} past the end of its wall.`);
  }
  for (const id of unplaced) {
    const fixture = room.fixtures.find((one) => one.id === id);
    if (!fixture) continue;
    const where = isKnown(id) ? 'it stays where it was' : 'it stands at the middle of the first';
    words.push(`${nameOfFixture(fixture)}: the two walls it is measured from run side by side, so ${where}. Choose another wall.`);
  }
  const before = new Set(outsideOf(classroom, classroom.room, arrangement).map(({ id }) => id));
  for (const { id, label } of outsideOf(classroom, room, arrangement))
    if (!before.has(id)) words.push(`${label} reaches outside the walls.`);
  return words;
}

const outsideOf = (classroom: Classroom, room: Room, arrangement: string): { id: string; label: string }[] =>
  measureOutside(buildScene({ ...classroom, room }, arrangement), 1).map(({ body }) => ({ id: body.id, label: body.label }));

import type { Session } from '#client/session/types.ts';
import { areaName } from '#model/catalogue/areas.ts';
import type { Finding } from '#model/findings/finding.ts';
import { distance } from '#model/geometry/vec.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Fixture, Opening, Piece } from '#model/schema/types.ts';
import { sayQuantity } from '#model/units/quantity.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { compassWord } from '../text/compass.ts';
import { capital } from '../text/sayList.ts';
import { wallName } from '../text/wallName.ts';
import { areasOfShelves } from './areas.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from './bodies.ts';
import type { Item } from './items.ts';
import { cellAt, cellsOf, neatlineBounds } from './neatline.ts';
import { isOfWidth } from './reportParts.ts';
import { wallLength } from './roomShape.ts';

const pieceWords: Readonly<Record<Piece['kind'], string>> = {
  shelf: 'Shelf',
  table: 'Table',
  seat: 'Seat',
  'mat-stand': 'Mat stand',
  easel: 'Easel',
  rug: 'Rug',
  'adult-seat': 'Adult’s chair',
  other: 'Own piece',
};
const fixtureWords: Readonly<Record<Fixture['kind'], string>> = {
  column: 'Column',
  partition: 'Partition',
  sink: 'Sink',
  radiator: 'Radiator',
  hearth: 'Hearth',
  'built-in': 'Built-in cupboard',
  step: 'Step',
  other: 'Other fixture',
};
const openingWords: Readonly<Record<Opening['kind'], string>> = { door: 'Door', window: 'Window', passage: 'Passage' };

/** What the kinds of a list of a file are called; whether a file has one of them is for whoever reads it to ask. */
export const kindWords = new Map<string, Readonly<Record<string, string>>>([
  ['pieces', pieceWords],
  ['fixtures', fixtureWords],
  ['openings', openingWords],
]);

export const pieceKindName = (kind: Piece['kind']): string => pieceWords[kind];
export const fixtureKindName = (kind: Fixture['kind']): string => fixtureWords[kind];
export const openingKindName = (kind: Opening['kind']): string => openingWords[kind];

/** "Shelf 7", "Table T3", "Sink", "Door, garden", "North wall": how the sheet calls a thing. */
export function nameOfItem(session: Session, item: Item): string {
  const { room } = session.classroom();
  if (item.kind === 'piece') {
    const piece = session.arrangement().pieces.find((p) => p.id === item.id);
    return piece ? nameOfPiece(piece, pieceNumbers(session.classroom())) : 'A thing that is gone';
  }
  if (item.kind === 'fixture') {
    const fixture = room.fixtures.find((f) => f.id === item.id);
    return fixture ? nameOfFixture(fixture) : 'A thing that is gone';
  }
  if (item.kind === 'opening') {
    const opening = room.openings.find((o) => o.id === item.id);
    return opening ? nameOfOpening(opening) : 'A thing that is gone';
  }
  if (item.kind === 'wall') return nameOfWall(session, item.id);
  const index = room.corners.findIndex((c) => c.id === item.id);
  return `Corner ${index + 1}`;
}

/** As a name stands within a sentence. */
export const lower = (name: string): string => `${name[0]?.toLowerCase() ?? ''}${name.slice(1)}`;

export function nameOfPiece(piece: Piece, numbers: ReadonlyMap<string, string>): string {
  const number = numbers.get(piece.id);
  return number ? `${pieceWords[piece.kind]} ${number}` : piece.name || pieceWords[piece.kind];
}

export const nameOfFixture = (fixture: Pick<Fixture, 'kind' | 'name'>): string => fixture.name || fixtureWords[fixture.kind];
/** "Door, garden" */
export const nameOfOpening = (opening: Pick<Opening, 'kind' | 'name'>): string =>
  opening.name ? `${openingWords[opening.kind]}, ${opening.name}` : openingWords[opening.kind];

function nameOfWall(session: Session, corner: string): string {
  const { walls } = shapeOfRoom(session.classroom().room);
  const wall = walls.find((w) => w.corner === corner);
  if (!wall) return 'A wall that is gone';
  return capital(wallName(walls, wall));
}

/** "Shelf 7, mathematics, B5 to B7, open to the east. At B4 a way is 0.74 m wide; it must be 0.915 m": what is said when a thing is chosen. */
export function describeItem(session: Session, item: Item): string {
  const { room, display } = session.classroom();
  const bounds = neatlineBounds(room.corners);
  const parts = [nameOfItem(session, item)];
  if (item.kind === 'piece') {
    const piece = session.arrangement().pieces.find((p) => p.id === item.id);
    if (!piece) return parts.join(', ');
    parts.push(...sayPiece(session, piece), cellsOf(bodyOfPiece(piece).footprint, bounds), ...openTo(piece));
    if (piece.locked) parts.push('locked');
  }
  if (item.kind === 'fixture') {
    const fixture = room.fixtures.find((f) => f.id === item.id);
    if (fixture) parts.push(cellsOf(bodyOfFixture(fixture).footprint, bounds));
  }
  if (item.kind === 'opening') {
    const opening = shapeOfRoom(room).openings.find((o) => o.id === item.id);
    if (opening) parts.push(`${sayLength(opening.raw.width, display.units)} wide`, cellsOf([opening.a, opening.b], bounds));
  }
  if (item.kind === 'wall') parts.push(`${sayLength(wallLength(room.corners, item.id) ?? 0, display.units)} long`);
  const holder = session.people().find((person) => !person.isMe && person.holds === item.id);
  if (holder) parts.push(`held by ${holder.name || holder.initials}`);
  return [parts.join(', '), ...worstOf(session, item.id)].join('. ');
}

function sayPiece(session: Session, piece: Piece): string[] {
  if (piece.kind !== 'shelf') return [];
  const area = areasOfShelves(session.arrangement(), session.classroom().materials).get(piece.id);
  return area ? [area.strand ? area.strand : areaName(area.area).toLowerCase()] : [];
}

function openTo(piece: Piece): string[] {
  if (piece.kind !== 'shelf' || piece.sides.length === 0) return [];
  const body = bodyOfPiece(piece);
  return [`open to the ${piece.sides.map((side) => compassWord(body.edges[side].outward)).join(' and the ')}`];
}

const ranks = { must: 0, should: 1, note: 2 } as const;
const rankOf = ({ outcome, severity }: Finding): number => (outcome === 'problem' ? ranks[severity] : 3);

/** Findings about a thing that nobody has left as they are: the gravest first, of those the nearest to it; last what is not known. */
function findingsAbout(session: Session, id: string): readonly Finding[] {
  const all = session.report()?.findings ?? [];
  const { room } = session.classroom();
  const thing = session.arrangement().pieces.find((piece) => piece.id === id) ?? room.fixtures.find((fixture) => fixture.id === id);
  const away = ({ at }: Finding): number => (at && thing ? distance(at, thing) : 0);
  return all.filter((f) => f.subjects.includes(id) && f.leftReason === null).sort((p, q) => rankOf(p) - rankOf(q) || away(p) - away(q));
}

/** Nothing while the checks are still looking: what they found before may be of another place. */
function worstOf(session: Session, id: string): string[] {
  if (session.isThinking()) return [];
  const worst = findingsAbout(session, id)[0];
  return worst ? [sayFinding(session, worst)] : [];
}

const musts = { must: 'it must be', should: 'it should be', note: 'better were' } as const;

/** "At G4 a way is 0.70 m wide; it must be 0.711 m": it may be far from the thing. What is no width is said as the list says it. */
function sayFinding(session: Session, finding: Finding): string {
  const { message, measured, needed, at, severity, outcome } = finding;
  const { room, display } = session.classroom();
  const cell = at ? cellAt(at, neatlineBounds(room.corners)) : '';
  if (measured && needed && needed.value !== 0 && isOfWidth(finding)) {
    const wide = `${cell === '' ? 'A' : `At ${cell} a`} way is ${sayQuantity(measured, display.units, needed.value)} wide`;
    return `${wide}; ${musts[severity]} ${sayQuantity(needed, display.units)}`;
  }
  const head = outcome === 'cannot-tell' ? 'Not known' : capital(severity);
  return `${head}${cell === '' ? '' : `, at ${cell}`}: ${withoutCaution(message)}`;
}

/** One line has no room for whose word counts in the end; the list has it. */
const withoutCaution = (message: string): string =>
  message.replace(/ (?:Not legal advice: y|Y)our [a-z ]+ decides\.$/, '').replace(/\.$/, '');

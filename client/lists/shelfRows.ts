import type { Person, Session } from '#client/session/types.ts';
import type { Report } from '#model/analysis/report.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { keptWith } from '#model/scene/kept.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Arrangement, Corner, Piece } from '#model/schema/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { areasOfShelves } from '../plan/areas.ts';
import { fixtureKindName, nameOfItem, nameOfPiece, openingKindName, pieceKindName } from '../plan/describe.ts';
import { type Item, piecesInOrder } from '../plan/items.ts';
import { cellsOf, neatlineBounds } from '../plan/neatline.ts';
import { wallLength } from '../plan/roomShape.ts';
import { figure } from '../text/figure.ts';
import { checksBySubject } from './trayChecks.ts';

/** One line of the list: a thing of the plan in words. Plain values, so that a line is drawn again only when it reads differently. */
export interface ListRow {
  readonly kind: Item['kind'];
  readonly id: string;
  /** "7", "T3", or "" */
  readonly number: string;
  readonly name: string;
  readonly area: string;
  readonly strand: string;
  /** What it holds, or is called. */
  readonly holds: string;
  readonly size: string;
  readonly trays: number;
  readonly isLocked: boolean;
  readonly check: string;
  readonly severity: Severity | null;
  /** How grave each word of `check` is, in the same order: "must, should". */
  readonly graves: string;
  /** Initials and edge of somebody else who has it chosen, or moves it. */
  readonly heldBy: string;
  readonly isMoved: boolean;
  readonly edge: Person['edge'] | null;
}

export interface ListRows {
  readonly shelves: readonly ListRow[];
  /** Tables and all other pieces. */
  readonly others: readonly ListRow[];
  readonly fixtures: readonly ListRow[];
  readonly openings: readonly ListRow[];
  readonly walls: readonly ListRow[];
}

export function isSameRow(now: ListRow, before: ListRow | undefined): boolean {
  return before !== undefined && (Object.keys(now) as (keyof ListRow)[]).every((key) => before[key] === now[key]);
}

/** Everything that can be chosen on the plan, in the plan's own order. */
export function listRows(session: Session, report: Report | null = session.report()): ListRows {
  const classroom = session.classroom();
  const { room, display, materials } = classroom;
  const arrangement = session.arrangement();
  const numbers = pieceNumbers(classroom);
  const areas = areasOfShelves(arrangement, materials);
  const standing = materialsByPiece(arrangement);
  const others = session.people().filter((person) => !person.isMe);
  const row = (item: Item, rest: Partial<ListRow>): ListRow => ({
    ...blank,
    ...item,
    ...checkOf(report, item, standing.get(item.id)),
    ...holderOf(others, item.id),
    ...rest,
  });
  const pieces = piecesInOrder(arrangement, classroom).map((piece) => {
    const area = areas.get(piece.id);
    return row(
      { kind: 'piece', id: piece.id },
      {
        number: numbers.get(piece.id) ?? '',
        name: nameOfPiece(piece, numbers),
        area: area?.area ?? '',
        strand: area?.strand ?? '',
        holds: holdsOf(piece),
        size: saySize(piece, display.units),
        trays: standing.get(piece.id)?.length ?? 0,
        isLocked: piece.locked,
      },
    );
  });
  const isShelf = new Set(arrangement.pieces.filter((p) => p.kind === 'shelf').map((p) => p.id));
  return {
    shelves: pieces.filter((r) => isShelf.has(r.id)),
    others: pieces.filter((r) => !isShelf.has(r.id)),
    fixtures: room.fixtures.map((f) =>
      row(
        { kind: 'fixture', id: f.id },
        { name: f.name || fixtureKindName(f.kind), holds: f.name ? fixtureKindName(f.kind) : '', size: saySize(f, display.units) },
      ),
    ),
    openings: room.openings.map((o) =>
      row({ kind: 'opening', id: o.id }, { name: openingKindName(o.kind), holds: o.name ?? '', size: sayLength(o.width, display.units) }),
    ),
    walls: room.corners.map((c, i) => {
      const item: Item = { kind: 'wall', id: c.id };
      const long = wallLength(room.corners, c.id) ?? 0;
      return row(item, { name: nameOfItem(session, item), holds: wallCells(room.corners, i), size: sayLength(long, display.units) });
    }),
  };
}

function wallCells(corners: readonly Corner[], index: number): string {
  const ends = [corners[index], corners[(index + 1) % corners.length]].filter((c) => c !== undefined);
  return cellsOf(ends, neatlineBounds(corners));
}

const blank = { number: '', name: '', area: '', strand: '', holds: '', size: '', trays: 0, isLocked: false } as const;

function materialsByPiece(arrangement: Arrangement): Map<string, string[]> {
  const standing = new Map<string, string[]>();
  for (const { piece, material } of arrangement.placements) {
    if (piece === null) continue;
    const here = standing.get(piece);
    if (here) here.push(material);
    else standing.set(piece, [material]);
  }
  return standing;
}

/** The name without the number it repeats; what else a piece is called. A shelf whose name is its number keeps it; one without a name says so. */
export function holdsOf(piece: Pick<Piece, 'kind' | 'name'>): string {
  if (piece.kind === 'shelf' || piece.kind === 'table') {
    const own = piece.name.replace(/^\s*(?:shelf|table)?\s*\d*\s*[:,.–-]?\s*/i, '');
    if (own !== '' || piece.kind !== 'shelf') return own;
    return piece.name.trim() === '' ? 'no name yet' : piece.name.trim();
  }
  return piece.name === pieceKindName(piece.kind) ? '' : piece.name;
}

/** "1.80 × 0.70", long by high as the list's head says; a dash for a height nobody has measured. */
export const saySize = (sized: Sized, units: LengthUnits): string => sizes[units](sized);

interface Sized {
  readonly width: number;
  readonly height: number | null;
}

const sizes: Readonly<Record<LengthUnits, (sized: Sized) => string>> = {
  metric: keptWith(sizeIn('metric')),
  imperial: keptWith(sizeIn('imperial')),
};

function sizeIn(units: LengthUnits): (sized: Sized) => string {
  // Feet and inches break at the × only.
  const plain = (mm: number): string => figure(mm, units).replaceAll(' ', '\u00a0');
  return ({ width, height }) => `${plain(width)} × ${height === null ? '–' : plain(height)}`;
}

const topics: Readonly<Record<string, string>> = {
  way: 'way',
  reach: 'reach',
  order: 'order',
  floor: 'floor',
  places: 'places',
  sight: 'sight',
  exit: 'way out',
  steady: 'steady',
  survey: 'drawing',
};

function gravest(found: readonly Finding[]): Finding | undefined {
  const bySeverity = (severity: Severity) => found.find((finding) => finding.severity === severity);
  return bySeverity('must') ?? bySeverity('should') ?? bySeverity('note');
}

/** What a line says where no check found anything, but one could not tell. */
export const NOT_KNOWN = 'not known';

/** What the checks of a thing, and of what stands on it, are about: "way, order"; else "not known" where one could not tell, else "fine". */
export function checkOf(
  report: Report | null,
  item: Item,
  standing: readonly string[] = [],
): Pick<ListRow, 'check' | 'severity' | 'graves'> {
  if (!report) return { check: 'being looked at', severity: null, graves: '' };
  const checks = checksBySubject(report);
  const own = checks.get(item.id) ?? (item.kind === 'wall' ? checks.get(`wall:${item.id}`) : undefined);
  const ofTrays = standing.flatMap((material) => checks.get(material) ?? []).filter((finding) => !own?.includes(finding));
  if (own || ofTrays.length > 0) return sayFound(ofTrays.length === 0 && own ? own : [...(own ?? []), ...ofTrays]);
  const unknown = unknownOf(report.findings);
  return [item.id, ...standing].some((id) => unknown.has(id)) ? { ...fine, check: NOT_KNOWN } : fine;
}

/** Ids of the things about which a check could not tell. */
const unknownOf = keptWith(
  (findings: Report['findings']): ReadonlySet<string> =>
    new Set(findings.flatMap((f) => (f.outcome === 'cannot-tell' && f.leftReason === null ? f.subjects : []))),
);

const fine = { check: 'fine', severity: null, graves: '' } as const;

const sayFound = keptWith((found: readonly Finding[]): Pick<ListRow, 'check' | 'severity' | 'graves'> => {
  const worst = gravest(found);
  if (!worst) return fine;
  const topicOf = ({ rule }: Finding): string => topics[rule.split('/')[0] ?? ''] ?? rule;
  const words = [...new Set(found.map(topicOf))];
  const graves = words.map((word) => gravest(found.filter((finding) => topicOf(finding) === word))?.severity ?? 'note');
  return { check: words.join(', '), severity: worst.severity, graves: graves.join(', ') };
});

function holderOf(others: readonly Person[], id: string): Pick<ListRow, 'heldBy' | 'isMoved' | 'edge'> {
  const holder = others.find((person) => person.holds === id);
  return { heldBy: holder?.initials ?? '', isMoved: holder?.preview?.piece === id, edge: holder?.edge ?? null };
}

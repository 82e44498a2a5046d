import { bySeverity } from '#client/checks/sortFindings.ts';
import type { Report } from '#model/analysis/report.ts';
import { areaLetters } from '#model/catalogue/areas.ts';
import type { Finding } from '#model/findings/finding.ts';
import { distance, type Point } from '#model/geometry/vec.ts';
import { sameList } from '#model/scene/kept.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Piece } from '#model/schema/types.ts';
import { areasOfShelves } from '../areas.ts';
import { bodyOfPiece } from '../bodies.ts';
import type { PlanModel } from '../planModel.ts';
import type { Viewport } from '../viewport.ts';
import { drawSeverity } from './drawMarks.ts';
import { besideLabel, type LabelPlace, labelPlace } from './labelPlace.ts';
import { at, type Pen } from './pen.ts';
import { squaresOf } from './squares.ts';

interface Mark {
  readonly at: Point;
  readonly finding: Finding;
}
interface Laid {
  readonly findings: Report['findings'];
  readonly labels: readonly LabelPlace[];
  readonly view: Viewport;
  readonly shown: Finding | null;
  readonly marks: readonly Mark[];
}

/** px: of two marks nearer than this the gravest is seen, so that none lies on another */
const CLOSE = 14;
/** px to the mm from which marks have their whole size, and the least share of it: a large room seen whole keeps its drawing */
const WHOLE = 0.03;
const LEAST = 0.6;

/** px that a mark may be moved, and a little more */
const FAR = 40;

const sizeOfMarks = ({ k }: Viewport): number => Math.max(LEAST, Math.min(1, k / WHOLE));

// Laid out once for one report: the layer itself is drawn at each frame of a drag.
const laid = new WeakMap<PlanModel, Laid>();

/** A mark where each open finding is, beside the words of the thing it lies on. `arrow`: the one drawn as an arrow instead. */
export function drawFindings(pen: Pen, model: PlanModel, report: Report, shown: Finding | null, arrow: Finding | null): void {
  let known = laid.get(model);
  const labels = sameList(known?.labels, labelsOf(pen, model));
  const isSame = known?.findings === report.findings && known.labels === labels && known.view === pen.view && known.shown === shown;
  if (!known || !isSame) {
    known = { findings: report.findings, labels, view: pen.view, shown, marks: layMarks(pen, labels, report, shown) };
    laid.set(model, known);
  }
  const size = sizeOfMarks(pen.view);
  for (const { at: place, finding } of known.marks) if (finding !== arrow && finding !== shown) drawSeverity(pen, place, finding, size);
  // The one looked at above the others, and whole.
  const own = known.marks.find(({ finding }) => finding === shown);
  if (own && shown !== arrow) drawSeverity(pen, own.at, own.finding);
}

/** @param labels the words on the plan that no mark may cover */
export function layMarks(pen: Pen, labels: readonly LabelPlace[], report: Report, shown: Finding | null): Mark[] {
  const reach = labels.reduce((most, { long }) => Math.max(most, long), 1) + FAR;
  const squares = squaresOf<{ readonly label: LabelPlace; readonly i: number }>(reach);
  labels.forEach((label, i) => {
    squares.add(label.center, { label, i });
  });
  const labelsNear = (p: Point): LabelPlace[] =>
    squares
      .near(p)
      .filter(({ label }) => distance(label.center, p) <= label.long + FAR)
      .sort((one, other) => one.i - other.i)
      .map(({ label }) => label);
  const close = CLOSE * sizeOfMarks(pen.view);
  const taken = squaresOf<Point>(close);
  const marks: Mark[] = [];
  for (const finding of bySeverity(report)) {
    if (!finding.at || finding.leftReason !== null) continue;
    const isFaint = finding.severity === 'note' || finding.outcome === 'cannot-tell';
    if (isFaint && finding !== shown) continue;
    const onPlan = at(pen, finding.at);
    const place = clearOfLabels(onPlan, labelsNear(onPlan));
    if (finding !== shown && taken.near(place).some((other) => distance(place, other) < close)) continue;
    taken.add(place, place);
    marks.push({ at: place, finding });
  }
  return marks;
}

function clearOfLabels(p: Point, near: readonly LabelPlace[]): Point {
  const isClear = (place: Point): boolean => near.every((label) => besideLabel(place, label) === place);
  for (const label of near) {
    const beside = besideLabel(p, label, isClear);
    if (beside !== p) return beside;
  }
  return p;
}

/** The words on shelves and tables, as drawPiece writes them. */
export function labelsOf(pen: Pen, { session, moving }: PlanModel, without: string | null = null): LabelPlace[] {
  const arrangement = session.arrangement();
  const numbers = pieceNumbers(session.classroom());
  const areas = areasOfShelves(arrangement, session.classroom().materials);
  return arrangement.pieces.flatMap((piece) => {
    if (piece.id === without || moving?.ids.has(piece.id) || (piece.kind !== 'shelf' && piece.kind !== 'table')) return [];
    const area = areas.get(piece.id);
    const letters = piece.kind === 'shelf' && area ? areaLetters(area.area, area.strand) : '';
    const text = [numbers.get(piece.id), letters].filter(Boolean).join(' ');
    return labelOf(pen, piece, text) ?? [];
  });
}

const placed = new WeakMap<Piece, { readonly view: Viewport; readonly text: string; readonly place: LabelPlace | null }>();

/** The same object while neither the thing nor the paper moves. */
function labelOf(pen: Pen, piece: Piece, text: string): LabelPlace | null {
  const known = placed.get(piece);
  if (known?.view === pen.view && known.text === text) return known.place;
  const place = labelPlace(pen, bodyOfPiece(piece), text, piece.kind === 'shelf' ? 650 : 400);
  placed.set(piece, { view: pen.view, text, place });
  return place;
}

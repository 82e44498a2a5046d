import { lerp } from '#model/geometry/vec.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { bodyOfFixture, bodyOfPiece } from './bodies.ts';
import type { WordsAt } from './handles.ts';
import { bodyById, type PlanModel, rawRoomOf, roomOf } from './planModel.ts';
import { narrowPlaceOf } from './reportParts.ts';
import { toScreen } from './viewport.ts';

/** px: half of what stands on a thing, "T5" or "12 CU" */
const LABEL = 9;
/** px: the figures beside the arrow of a narrow place, whose middle is so far right of the arrow */
const FIGURES = { radius: 34, aside: 32 };

/** Where other things have their words, and the figures of the place that is looked at: the handle to turn by keeps clear of them. */
export function wordsBeside(model: PlanModel, id: string): WordsAt[] {
  const { session, view } = model;
  const bodies = [...session.arrangement().pieces.map(bodyOfPiece), ...rawRoomOf(model).fixtures.map(bodyOfFixture)];
  const labels = bodies.filter((body) => body.id !== id).map(({ center }) => ({ at: toScreen(view, center), radius: LABEL }));
  const report = session.report();
  const shown = session.view().finding;
  const finding = shown === null ? undefined : report?.findings.find(({ key }) => key === shown);
  if (!report || !finding) return labels;
  const obstacles = { bodyById: (other: string) => bodyById(model, other), room: roomOf(model), strips: seatStrips(session.scene()) };
  const place = narrowPlaceOf(finding, report, obstacles);
  if (!place) return labels;
  const middle = toScreen(view, lerp(place.a, place.b, 0.5));
  return [...labels, { at: { x: middle.x + FIGURES.aside, y: middle.y }, radius: FIGURES.radius }];
}

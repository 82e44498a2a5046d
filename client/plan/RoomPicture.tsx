import { useEffect, useMemo, useRef } from 'react';
import type { Report } from '#model/analysis/report.ts';
import type { Point } from '#model/geometry/vec.ts';
import { seatStrips } from '#model/measures/seats.ts';
import type { Scene } from '#model/scene/types.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { useBoxSize } from '../front/useBoxSize.ts';
import { colours } from '../styles/tokens.ts';
import { areasOfShelves } from './areas.ts';
import { drawFixture } from './draw/drawFixture.ts';
import { drawMat, drawNarrowArrow, drawNarrowStrip, drawSeverity } from './draw/drawMarks.ts';
import { drawOpening, drawOpeningNames } from './draw/drawOpenings.ts';
import { drawPiece } from './draw/drawPiece.ts';
import { drawRoom, drawScaleBar, drawZones } from './draw/drawRoom.ts';
import { drawUnseen } from './draw/drawUnseen.ts';
import { besideLabel, labelPlace } from './draw/labelPlace.ts';
import { at, fill, type Pen, stroke, write } from './draw/pen.ts';
import { neatlineBounds } from './neatline.ts';
import { matsIn, narrowPlaceOf, unseenIn } from './reportParts.ts';
import { fitRoom, type Size } from './viewport.ts';

/** px: how high a small plan grows, and what stays free round the walls */
const MOST_HIGH = 280;
const MARGIN = 26;
/** a leaf that swings out of the room needs more */
const MARGIN_LEAF = 70;

interface Props {
  readonly scene: Scene;
  /** What was found, marked on it. */
  readonly report?: Report;
  /** Drawn over everything else; the same function as long as it draws the same. */
  readonly over?: (pen: Pen) => void;
  /** In words, for those who do not see it. */
  readonly label: string;
}

/** A room in small, drawn by the same hand as the plan of the sheet. */
export function RoomPicture({ scene, report, over, label }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width } = useBoxSize(frame);
  const size = useMemo(() => sizeFor(scene, width), [scene, width]);

  useEffect(() => {
    const ctx = canvas.current?.getContext('2d');
    if (!ctx || size.width === 0) return;
    const dense = globalThis.devicePixelRatio || 1;
    ctx.setTransform(dense, 0, 0, dense, 0, 0);
    ctx.clearRect(0, 0, size.width, size.height);
    const pen: Pen = { ctx, view: viewFor(scene, size), units: scene.classroom.display.units, isRightToLeft: false };
    drawSmall(pen, scene, report ?? null, size);
    over?.(pen);
  }, [scene, report, over, size]);

  const dense = globalThis.devicePixelRatio || 1;
  return (
    <div ref={frame}>
      <canvas
        ref={canvas}
        className="example-plan"
        role="img"
        aria-label={label}
        width={Math.round(size.width * dense)}
        height={Math.round(size.height * dense)}
        style={{ width: size.width, height: size.height }}
      />
    </div>
  );
}

function marginsOf(scene: Scene) {
  const { openings, outline } = scene.room;
  const bounds = neatlineBounds(outline);
  const leaf = (side: 'top' | 'right' | 'bottom' | 'left'): number => {
    const outwards = { top: [0, 1], right: [-1, 0], bottom: [0, -1], left: [1, 0] }[side] as [number, number];
    const has = openings.some(
      ({ wall, raw }) =>
        raw.kind === 'door' &&
        raw.swing.startsWith('out-') &&
        wall.inward.x * outwards[0] + wall.inward.y * outwards[1] > 0.9 &&
        bounds.maxX > bounds.minX,
    );
    return has ? MARGIN_LEAF : MARGIN;
  };
  return { top: leaf('top'), right: leaf('right'), bottom: leaf('bottom'), left: leaf('left') };
}

function sizeFor(scene: Scene, width: number): Size {
  const bounds = neatlineBounds(scene.room.outline);
  const margins = marginsOf(scene);
  const [wide, high] = [Math.max(1, bounds.maxX - bounds.minX), Math.max(1, bounds.maxY - bounds.minY)];
  const k = Math.min((width - margins.left - margins.right) / wide, (MOST_HIGH - margins.top - margins.bottom) / high);
  return { width, height: Math.max(120, Math.ceil(high * k + margins.top + margins.bottom)) };
}

const viewFor = (scene: Scene, size: Size) => fitRoom(neatlineBounds(scene.room.outline), size, marginsOf(scene));

/** Where an adult watches from: a ring with a dot, and the word. */
function drawWatcher(pen: Pen, p: Point): void {
  pen.ctx.beginPath();
  pen.ctx.arc(p.x, p.y, 5, 0, 2 * Math.PI);
  stroke(pen, { width: 1.4 });
  pen.ctx.beginPath();
  pen.ctx.arc(p.x, p.y, 1.6, 0, 2 * Math.PI);
  fill(pen, colours.ink);
  write(pen, 'adult', { x: p.x, y: p.y + 13 }, { size: 10.5, colour: colours.pencilText });
}

function drawSmall(pen: Pen, scene: Scene, report: Report | null, size: Size): void {
  const { room, bodies, bodyById, arrangement, classroom } = scene;
  const numbers = pieceNumbers(classroom);
  const areas = areasOfShelves(arrangement, classroom.materials);
  drawRoom(pen, room);
  drawZones(pen, classroom.room.zones);
  for (const opening of room.openings) drawOpening(pen, opening);
  drawOpeningNames(pen, room);
  drawUnseen(pen, unseenIn(report));
  for (const mat of matsIn(report)) drawMat(pen, mat);
  const obstacles = { bodyById: (id: string) => bodyById.get(id), room, strips: seatStrips(scene) };
  const [first] = report?.findings ?? [];
  const narrow = first && report ? narrowPlaceOf(first, report, obstacles) : null;
  if (narrow) drawNarrowStrip(pen, narrow);
  const isUnder = (id: string): boolean => bodyById.get(id)?.piece?.kind === 'rug';
  for (const body of [...bodies].sort((p, q) => Number(isUnder(q.id)) - Number(isUnder(p.id)))) {
    if (body.piece) drawPiece(pen, body, { number: numbers.get(body.id) ?? null, area: areas.get(body.id) ?? null });
    else drawFixture(pen, body);
  }
  if (narrow && first) drawNarrowArrow(pen, narrow, first.severity);
  for (const { x, y } of arrangement.watch ?? []) drawWatcher(pen, at(pen, { x, y }));
  const shelves = bodies.filter(({ piece }) => piece?.kind === 'shelf' || piece?.kind === 'table');
  const labels = shelves.flatMap((body) => labelPlace(pen, body, `${numbers.get(body.id) ?? ''} MM`, 650) ?? []);
  for (const finding of report?.findings ?? []) {
    if (!finding.at || (narrow && finding === first)) continue;
    const p = at(pen, finding.at);
    drawSeverity(pen, labels.map((label) => besideLabel(p, label)).find((beside) => beside !== p) ?? p, finding);
  }
  drawScaleBar(pen, { x: size.width - 20, y: size.height - 20 });
}

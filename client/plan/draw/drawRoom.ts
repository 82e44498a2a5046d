import { colours, lines } from '#client/styles/tokens.ts';
import type { SceneRoom } from '#model/scene/types.ts';
import type { Zone } from '#model/schema/types.ts';
import { scaleLength } from '../scaleBar.ts';
import { hatch } from './hatch.ts';
import { at, fill, line, type Pen, path, planPath, stroke, write } from './pen.ts';

/** mm: walls are drawn this thick, outside the measured inner face. Their true thickness is not asked. */
export const WALL = 160;

export const wallPx = (pen: Pen): number => Math.max(5, WALL * pen.view.k);

/** Floor and walls: the stroke is laid on both sides and the floor covers its inner half. */
export function drawRoom(pen: Pen, room: SceneRoom): void {
  planPath(pen, room.outline);
  pen.ctx.lineJoin = 'miter';
  pen.ctx.miterLimit = 6;
  stroke(pen, { colour: colours.wall, width: 2 * wallPx(pen) });
  planPath(pen, room.outline);
  fill(pen, colours.leaf);
}

/** A small cross at each metre of the neatline, on the floor only. */
export function drawGrid(pen: Pen, room: SceneRoom, origin: { x: number; y: number }, end: { x: number; y: number }): void {
  const { ctx } = pen;
  ctx.save();
  planPath(pen, room.outline);
  ctx.clip();
  ctx.beginPath();
  for (let x = origin.x + 1000; x < end.x; x += 1000) {
    for (let y = origin.y + 1000; y < end.y; y += 1000) {
      const p = at(pen, { x, y });
      ctx.moveTo(p.x - 2.5, p.y);
      ctx.lineTo(p.x + 2.5, p.y);
      ctx.moveTo(p.x, p.y - 2.5);
      ctx.lineTo(p.x, p.y + 2.5);
    }
  }
  stroke(pen, { colour: colours.rule, width: lines.grid });
  ctx.restore();
}

/** Floor that a rule set leaves out of the count, with its use in words. */
export function drawZones(pen: Pen, zones: readonly Zone[]): void {
  for (const zone of zones) {
    const ring = zone.outline.map(([x, y]) => at(pen, { x, y }));
    hatch(pen, ring, 'uncounted', colours.must, 7);
    path(pen, ring);
    stroke(pen, { colour: colours.pencil, width: 0.9, dash: [2.5, 2.5] });
    const middle = {
      x: ring.reduce((sum, p) => sum + p.x, 0) / ring.length,
      y: ring.reduce((sum, p) => sum + p.y, 0) / ring.length,
    };
    write(pen, zone.kind, middle, { size: 10, colour: colours.pencilText, ground: colours.leaf });
  }
}

/** A length to measure by. */
export function drawScaleBar(pen: Pen, corner: { x: number; y: number }): void {
  const { px, words: name } = scaleLength(pen.view.k, pen.units);
  const x = corner.x - px;
  line(pen, { x, y: corner.y }, { x: corner.x, y: corner.y }, { width: 4 });
  line(pen, { x: x + px / 2, y: corner.y }, { x: corner.x - 1, y: corner.y }, { width: 2, colour: colours.paper });
  const words = { size: 10, colour: colours.pencilText, ground: colours.paper };
  write(pen, '0', { x, y: corner.y + 10 }, words);
  write(pen, name, { x: corner.x, y: corner.y + 10 }, words);
}

/** "To the east wall": the sheet's top is called north, whatever the compass says. */
export function drawNorth(pen: Pen, foot: { x: number; y: number }): void {
  const tip = { x: foot.x, y: foot.y - 34 };
  line(pen, { x: foot.x, y: foot.y - 12 }, tip, { width: 1.1 });
  line(pen, { x: tip.x - 3.5, y: tip.y + 7 }, tip, { width: 1.1 });
  line(pen, { x: tip.x + 3.5, y: tip.y + 7 }, tip, { width: 1.1 });
  write(pen, 'N', { x: foot.x, y: foot.y - 3 }, { size: 10.5, weight: 600, isTitle: true });
}

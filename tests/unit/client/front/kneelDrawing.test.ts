import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { kneelDrawing, levelWordsAt, markOn, seenFace } from '#client/front/kneel/kneelDrawing.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const read = readClassroomFile(readFileSync('client/demo/demo-room.json', 'utf8'));
if (!read.ok) throw new Error('the demo room cannot be read');
const { sides } = buildScene(read.classroom);

describe('the mark of a thing on the picture from her eyes', () => {
  // Marks were drawn where the hidden spot would be: on the thing of the board above.
  it.each([100, 500, 900, 1200])('lies on its own face, in its own opening, from %i mm before the shelf', (distance) => {
    const radius = 8;
    let marks = 0;
    for (const side of sides) {
      const { openings } = kneelDrawing(side, { along: side.width / 2, distance, height: 778 });
      for (const opening of openings) {
        for (const drawn of opening.trays) {
          const face = seenFace(drawn, opening);
          const { x, z } = markOn(face, opening, radius);
          marks += 1;
          expect(z).toBeGreaterThanOrEqual(opening.from + radius - 1e-6);
          if (opening.to !== null) expect(z).toBeLessThanOrEqual(opening.to - radius + 1e-6);
          expect(x).toBeGreaterThanOrEqual(drawn.front.x - 1e-6);
          expect(x).toBeLessThanOrEqual(drawn.front.x + drawn.front.width + 1e-6);
          // Where the face is seen at all the mark lies on it.
          if (face.height >= 2 * radius) {
            expect(z).toBeGreaterThanOrEqual(face.z - 1e-6);
            expect(z).toBeLessThanOrEqual(face.z + face.height + 1e-6);
          }
        }
      }
    }
    expect(marks).toBeGreaterThan(80);
  });
});

describe('words on the picture from her eyes', () => {
  const { sides: plain } = buildScene(
    plainRoom({
      pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 160, width: 1200, depth: 320, height: 700, levels: [{ id: 'l1', surface: 620 }] }],
      materials: [
        { id: 'm1', name: 'Prisms', area: 'sensorial', width: 400, depth: 200, height: 130 },
        { id: 'm2', name: 'Tower', area: 'sensorial', width: 100, depth: 100, height: 500 },
      ],
      placements: [
        { material: 'm1', piece: 's1', side: 'front', level: 'l1', x: 500, y: 0 },
        { material: 'm2', piece: 's1', side: 'front', level: 'l1', x: 20, y: 0 },
      ],
    }),
  );
  const [side] = plain;
  if (!side) throw new Error('no shelf');
  const eye = { along: 600, distance: 900, height: 778 };
  const drawing = kneelDrawing(side, eye);

  it('lie on the larger part of a face that a rail runs across', () => {
    const rail = { from: 680, to: 700 };
    expect(drawing.openings.map((opening) => opening.rail)).toEqual([rail]);
    for (const opening of drawing.openings)
      for (const drawn of opening.trays) {
        const { z, height } = seenFace(drawn, opening);
        expect(height).toBeGreaterThan(40);
        expect(z + height <= rail.from + 1e-6 || z >= rail.to - 1e-6).toBe(true);
      }
  });

  it('of the line at her eyes keep off what stands there', () => {
    const words = { width: 150, height: 40 };
    expect(levelWordsAt(drawing, eye, words, 70)).toBe(1200 + 70 - 150);
    expect(levelWordsAt({ ...drawing, openings: [] }, eye, words, 70)).toBe(-70);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { kneelDrawing, markOn, seenFace } from '#client/front/kneel/kneelDrawing.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';

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

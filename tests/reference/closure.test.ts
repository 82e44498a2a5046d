import { describe, expect, it } from 'vitest';
import { traverse } from '#model/geometry/traverse.ts';
import { sub } from '#model/geometry/vec.ts';

// A worked example of the compass rule in a surveying course, "Compass Rule: Adjustment of Bearing and Distance of A
// Closed Traverse" (course slides, read at scribd.com/document/493615208): a traverse of four sides with distances,
// bearings, latitudes, departures, corrections and adjusted latitudes. The slides' unit (m) stands for our mm.
// The last departure is cut off in the stored copy: -41.865 and its adjusted value are reckoned from the row.
const sides = [
  {
    name: 'AB',
    distance: 80.4,
    azimuth: 76,
    latitude: 19.451,
    departure: 78.012,
    correction: [-0.0857, 0.0935],
    adjusted: [19.3653, 78.1055],
  },
  {
    name: 'BC',
    distance: 46.3,
    azimuth: 144,
    latitude: -37.457,
    departure: 27.214,
    correction: [-0.0493, 0.0538],
    adjusted: [-37.5063, 27.2678],
  },
  {
    name: 'CD',
    distance: 72.8,
    azimuth: 241,
    latitude: -35.294,
    departure: -63.672,
    correction: [-0.0776, 0.0846],
    adjusted: [-35.3716, -63.5874],
  },
  {
    name: 'DA',
    distance: 68,
    azimuth: 322,
    latitude: 53.585,
    departure: -41.865,
    correction: [-0.0724, 0.0791],
    adjusted: [53.5126, -41.7859],
  },
] as const;

/** Azimuths run clockwise from north, turns clockwise from side to side; our first side runs along +x (its own azimuth). */
const courses = sides.map(({ distance, azimuth }, i) => {
  const next = sides[(i + 1) % sides.length]?.azimuth ?? 0;
  return { length: distance, turn: (next - azimuth + 360) % 360 };
});
const found = traverse(courses);

/** A vector of ours as latitude (north) and departure (east). */
function geographic({ x, y }: { x: number; y: number }): [latitude: number, departure: number] {
  const azimuth = (sides[0].azimuth * Math.PI) / 180;
  return [x * Math.cos(azimuth) - y * Math.sin(azimuth), x * Math.sin(azimuth) + y * Math.cos(azimuth)];
}

describe('the compass rule, against a worked example', () => {
  it('closes its turns', () => expect(found.turnError).toBeCloseTo(0, 9));
  it('has the printed perimeter and misclosure', () => {
    expect(found.perimeter).toBeCloseTo(267.5, 6);
    const [latitude, departure] = geographic(found.misclosure);
    // The slides add up rounded latitudes: 0.285 printed, 0.2836 unrounded.
    expect(Math.abs(latitude - 0.285)).toBeLessThan(0.002);
    expect(Math.abs(departure + 0.311)).toBeLessThan(0.002);
  });
  it.each(sides.map((side, i) => [side.name, side, i] as const))('%s: latitude, departure and their adjusted values', (_, side, i) => {
    const [from, to] = [found.measured[i], found.measured[i + 1]];
    if (!from || !to) throw new Error('no such side');
    const [latitude, departure] = geographic(sub(to, from));
    expect(Math.abs(latitude - side.latitude)).toBeLessThan(6e-4);
    expect(Math.abs(departure - side.departure)).toBeLessThan(6e-4);
    const [a, b] = [found.adjusted[i], found.adjusted[(i + 1) % sides.length]];
    if (!a || !b) throw new Error('no such side');
    const [adjustedLatitude, adjustedDeparture] = geographic(sub(b, a));
    expect(Math.abs(adjustedLatitude - side.adjusted[0])).toBeLessThan(6e-4);
    expect(Math.abs(adjustedDeparture - side.adjusted[1])).toBeLessThan(6e-4);
    expect(adjustedLatitude - latitude).toBeCloseTo(side.correction[0], 3);
    expect(adjustedDeparture - departure).toBeCloseTo(side.correction[1], 3);
  });
  it('the adjusted sides close', () => {
    const total = sides.reduce(
      (sum, _, i) => {
        const [a, b] = [found.adjusted[i], found.adjusted[(i + 1) % sides.length]];
        return a && b ? { x: sum.x + b.x - a.x, y: sum.y + b.y - a.y } : sum;
      },
      { x: 0, y: 0 },
    );
    expect(Math.hypot(total.x, total.y)).toBeLessThan(1e-9);
  });
});

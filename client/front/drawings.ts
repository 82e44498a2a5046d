import type { Material } from '#model/schema/types.ts';

/** A plain line of a drawing, in px from the upper left of its box. */
export type Stroke =
  | { readonly kind: 'line'; readonly points: readonly number[] }
  | { readonly kind: 'box'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  | { readonly kind: 'ring'; readonly x: number; readonly y: number; readonly radius: number };

export type Content =
  | 'rods'
  | 'knobs'
  | 'cylinders'
  | 'cubes'
  | 'frame'
  | 'beads'
  | 'cards'
  | 'vessels'
  | 'pairs'
  | 'steps'
  | 'shapes'
  | 'chest'
  | 'globe';

/** What stands on a tray tells by its name first, then by what a child does with it. */
const byName: readonly (readonly [RegExp, Content])[] = [
  [/frame\b/i, 'frame'],
  [/knobless|without knobs/i, 'cylinders'],
  [/cylinder|knob/i, 'knobs'],
  [/\b(cube|tower|prism|block)s?\b/i, 'cubes'],
  [/\b(rod|stair|long)s?\b/i, 'rods'],
  [/bead|chain|abacus|counter/i, 'beads'],
  [/globe|sphere|solid/i, 'globe'],
  [/chest|cabinet|drawer|box/i, 'chest'],
  [/card|numeral|letter|label|book|picture|alphabet/i, 'cards'],
  [/pour|jug|bowl|spoon|wash|water|basin|sponge|cup|flower|polish/i, 'vessels'],
  [/map|puzzle|shape|form/i, 'shapes'],
];

const byMode: Readonly<Record<NonNullable<Material['mode']>, Content>> = {
  match: 'shapes',
  pair: 'pairs',
  grade: 'steps',
  sequence: 'beads',
  practise: 'vessels',
  name: 'cards',
};

export function contentOf(material: Pick<Material, 'name' | 'mode'>): Content {
  const named = byName.find(([words]) => words.test(material.name));
  if (named) return named[1];
  return material.mode ? byMode[material.mode] : 'chest';
}

const line = (...points: number[]): Stroke => ({ kind: 'line', points });
const box = (x: number, y: number, width: number, height: number): Stroke => ({ kind: 'box', x, y, width, height });
const ring = (x: number, y: number, radius: number): Stroke => ({ kind: 'ring', x, y, radius });
const times = (n: number, make: (i: number) => Stroke | Stroke[]): Stroke[] => Array.from({ length: n }, (_, i) => make(i)).flat();
const howMany = (room: number, each: number, most: number): number => Math.max(1, Math.min(most, Math.floor(room / each)));

/** A simple line drawing of a material's content in a box of w by h px; nothing where the box is too flat to draw in. */
export function contentStrokes(content: Content, w: number, h: number): Stroke[] {
  if (w < 8 || h < 5) return [];
  return draw[content](w, h);
}

const draw: Readonly<Record<Content, (w: number, h: number) => Stroke[]>> = {
  rods: (w, h) => {
    const n = howMany(h, 5, 6);
    return times(n, (i) => box(0, (h / n) * i, (w * (i + 1)) / n, h / n));
  },
  knobs: (w, h) => {
    const n = howMany(w, 9, 7);
    const each = w / n;
    return times(n, (i) => {
      const half = (each / 2) * (0.85 - (0.5 * i) / Math.max(1, n - 1));
      const x = each * (i + 0.5);
      return [box(x - half, h * 0.4, half * 2, h * 0.6), line(x, h * 0.4, x, h * 0.16), ring(x, h * 0.1, Math.min(2.2, h * 0.1))];
    });
  },
  // One of each set, side by side: wider and lower, thinner and higher.
  cylinders: (w, h) =>
    times(4, (i) => {
      const [x, half, rim] = [(w / 4) * (i + 0.5), (w / 4) * (0.44 - 0.08 * i), h * 0.07];
      const top = h * (0.36 - 0.1 * i);
      const round = Array.from({ length: 9 }, (_, k) => [
        x + half * Math.cos((k * Math.PI) / 4),
        top + rim - rim * Math.sin((k * Math.PI) / 4),
      ]).flat();
      return [line(...round), line(x - half, top + rim, x - half, h, x + half, h, x + half, top + rim)];
    }),
  cubes: (w, h) => {
    const n = howMany(h, 5, 6);
    const each = h / n;
    return times(n, (i) => {
      const width = w * (0.3 + (0.6 * i) / n);
      return box((w - width) / 2, each * i, width, each);
    });
  },
  frame: (w, h) => [
    box(0, 0, w, h),
    box(w * 0.08, h * 0.1, w * 0.84, h * 0.9),
    line(w / 2, h * 0.1, w / 2, h),
    ...times(howMany(h, 7, 5), (i) => ring(w / 2, h * 0.1 + ((i + 0.5) * h * 0.9) / howMany(h, 7, 5), Math.min(2, h / 8))),
  ],
  beads: (w, h) => {
    const rows = howMany(h, 7, 4);
    const r = Math.min(2.6, h / rows / 2.4);
    return times(rows, (row) => {
      const y = (h / rows) * (row + 0.5);
      return [line(0, y, w, y), ...times(howMany(w, r * 3.4, 8), (i) => ring(r * 1.8 + i * r * 3.2, y, r))];
    });
  },
  cards: (w, h) => {
    const n = howMany(w, 13, 5);
    const each = w / n;
    return times(n, (i) => [
      box(each * i + each * 0.12, 0, each * 0.76, h),
      line(each * (i + 0.34), h * 0.3, each * (i + 0.66), h * 0.3),
      line(each * (i + 0.34), h * 0.55, each * (i + 0.66), h * 0.55),
    ]);
  },
  vessels: (w, h) => {
    const cup = Math.min(w * 0.4, h * 1.1);
    const low = h * 0.35;
    return [
      line(w * 0.06, 0, w * 0.06 + cup * 0.12, h, w * 0.06 + cup * 0.8, h, w * 0.06 + cup * 0.92, 0, w * 0.06, 0),
      line(w * 0.06 + cup * 0.9, h * 0.2, w * 0.06 + cup * 1.1, h * 0.35, w * 0.06 + cup * 0.86, h * 0.65),
      line(w * 0.56, low, w * 0.62, h, w * 0.9, h, w * 0.96, low, w * 0.56, low),
    ];
  },
  pairs: (w, h) => {
    const n = howMany(w, 13, 5);
    const each = w / n;
    const side = Math.min(each * 0.62, h * 0.42);
    return times(n, (i) => [
      box(each * i + (each - side) / 2, h * 0.5 - side - 0.5, side, side),
      box(each * i + (each - side) / 2, h - side, side, side),
    ]);
  },
  steps: (w, h) => {
    const n = howMany(w, 5, 9);
    const each = w / n;
    return times(n, (i) => {
      const tall = h * (0.2 + (0.8 * (i + 1)) / n);
      return box(each * i, h - tall, each * 0.8, tall);
    });
  },
  shapes: (w, h) => {
    const r = Math.min(w / 7, h / 2);
    const y = h - r;
    return [
      ring(w / 6, y, r),
      box(w / 2 - r, y - r, r * 2, r * 2),
      line((w * 5) / 6 - r, h, (w * 5) / 6, y - r, (w * 5) / 6 + r, h, (w * 5) / 6 - r, h),
    ];
  },
  chest: (w, h) => {
    const n = howMany(h, 8, 4);
    return [
      box(0, 0, w, h),
      ...times(n, (i) => [line(0, (h / n) * i, w, (h / n) * i), line(w * 0.44, (h / n) * (i + 0.5), w * 0.56, (h / n) * (i + 0.5))]),
    ];
  },
  globe: (w, h) => {
    const r = Math.min(w * 0.32, h * 0.42);
    return [
      ring(w / 2, r, r),
      line(w / 2 - r, r, w / 2 + r, r),
      line(w / 2, r * 2, w / 2, h),
      line(w / 2 - r * 0.7, h, w / 2 + r * 0.7, h),
    ];
  },
};

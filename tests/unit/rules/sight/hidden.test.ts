import { hidden } from '#model/rules/sight/hidden.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
// The eye stands 1000 mm north of a wall-to-wall thing that is 200 mm deep: shadows are trapezia reckoned by hand.
const watch = [{ id: 'w1', x: 3000, y: 1000, eye: 1100 }];
const block = (height: number | null, change: Partial<Piece> = {}): Piece => ({
  id: 's1',
  kind: 'other',
  x: 3000,
  y: 2100,
  width: 1000,
  depth: 200,
  height,
  ...change,
});
const room = (pieces: Piece[], change: PlainRoomChange = {}) => plainRoom({ watch, pieces, ...change });
const shelf = (height: number): Piece => ({ ...block(height), kind: 'shelf' });

/**
 * Floor behind the block, 1200 mm from the eye at its back and seen to be 500 mm to each side at 1000: the shadow
 * reaches k times as far as the block. Behind its back edge it is a trapezium from 2 x 600 or less to k x 1000 wide.
 */
function behind(k: number): number {
  const far = 1200 * k;
  // Sides of the shadow: the rays through the front corners, 0.5 to the side for each mm out, until k times the front
  // edge; from there to k times the back corners the shadow is k x 1000 wide. The block itself is taken off.
  const knee = 1000 * k;
  const wedge = (from: number, to: number): number => (to * to - from * from) / 2;
  const total = knee <= 1200 ? 1000 * k * (far - 1200) + wedgeBefore(k) : wedge(1200, knee) + 1000 * k * (far - knee) + besides();
  return total / 1e6;
}
/** Slivers beside the block, between the rays and its sides, for shadows that reach past its back. */
const besides = (): number => 2 * (0.5 * 200 * 100);
const wedgeBefore = (k: number): number => {
  const knee = 1000 * k;
  return 2 * (0.5 * (knee - 1000) * (500 * k - 500)) + (1200 - knee) * (1000 * k - 1000);
};

const ell = {
  corners: (
    [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [3000, 2000],
      [3000, 5000],
      [0, 5000],
    ] as const
  ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
};

testRule(hidden, {
  fine: [
    { name: 'an empty room', classroom: room([]) },
    { name: 'as low as the head of a child at work', classroom: room([shelf(550)]) },
    { name: 'a shadow under a quarter of a square metre', classroom: room([block(570)]) },
    { name: 'looked through', classroom: room([block(1500, { seeThrough: true })]) },
    { name: 'a table of unknown height is looked through', classroom: room([block(null, { kind: 'table' })]) },
    { name: 'a rug lies flat', classroom: room([block(null, { kind: 'rug' })]) },
    { name: 'of unknown height, but low enough at every height that hides anything of size', classroom: room([block(null, { y: 4900 })]) },
    {
      name: 'two adults, one on each side of it',
      classroom: room([block(900)], { watch: [...watch, { id: 'w2', x: 3000, y: 4500, eye: 1100 }] }),
    },
    {
      name: "an adult's chair is looked from, not at",
      classroom: plainRoom({ pieces: [block(500), { id: 'a', kind: 'adult-seat', x: 1000, y: 1000, width: 450, depth: 450 }] }),
    },
    {
      name: 'a place on the wall looks into the room',
      classroom: room([], { watch: [{ id: 'w1', x: 3000, y: 0, eye: 1100 }] }),
    },
    { name: 'an L seen from its corner', classroom: room([], { room: ell, watch: [{ id: 'w1', x: 1500, y: 1000, eye: 1100 }] }) },
    { name: 'a class that minds only large patches', classroom: room([block(900)], { options: { 'sight/hidden': { least: 10 } } }) },
  ],
  problem: [
    {
      name: '0.9 m high: k = 550/200',
      classroom: room([block(900)]),
      findings: [{ messageKey: 'hidden', severity: 'should', subjects: ['s1'], measured: behind(2.75), needed: 0 }],
    },
    {
      name: '0.65 m high, small patches asked for: k = 550/450, cut off by the block itself',
      classroom: room([block(650)], { options: { 'sight/hidden': { least: 0.01 } } }),
      findings: [{ messageKey: 'hidden', measured: behind(550 / 450) }],
    },
    {
      name: 'as high as the eye: all the way to the south wall, 4000 mm off',
      classroom: room([block(1100)]),
      findings: [{ messageKey: 'hidden', measured: (4000 ** 2 - 1200 ** 2) / 2e6 + besides() / 1e6 }],
    },
    {
      name: 'behind a corner of the walls: the ray past the corner (3000, 2000) from (1000, 1000) meets the east wall below the floor there',
      classroom: room([], { room: ell, watch: [{ id: 'w1', x: 5000, y: 1000, eye: 1100 }] }),
      // x 2000 per y 1000 westwards: from the corner to the west wall at (0, 3500); below lies 3000 x 3000 less the triangle.
      findings: [{ messageKey: 'hidden', subjects: ['room'], measured: 3 * 3 - (3 * 1.5) / 2 }],
    },
    {
      name: 'a child with a lower head is hidden where the other is not',
      classroom: room([block(550)], { children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count: 8 }], head: 300 } }),
      findings: [{ messageKey: 'hidden', measured: behind(800 / 550) }],
    },
    {
      name: 'what one thing hides in two places is one finding; what another may hide is told apart',
      classroom: room([block(900), block(null, { id: 's2', x: 1200 })]),
      findings: [
        { messageKey: 'hidden', subjects: ['s1'], measured: behind(2.75) },
        { messageKey: 'heights', subjects: ['s2'], missing: ['the height of thing s2'] },
      ],
    },
  ],
  cannotTell: [
    {
      name: 'a height is missing',
      classroom: room([block(null)]),
      findings: [{ messageKey: 'heights', severity: 'should', subjects: ['s1'], missing: ['the height of thing s1'] }],
    },
    {
      name: 'nobody watches',
      classroom: plainRoom({ pieces: [block(500)] }),
      findings: [
        {
          messageKey: 'watch',
          severity: 'should',
          subjects: ['room'],
          missing: ['where adults watch from: a watching place, or the chair of an adult'],
        },
      ],
    },
    {
      name: 'the watching place lies outside',
      classroom: room([], { watch: [{ id: 'w1', x: 9000, y: 1000, eye: 1100 }] }),
      findings: [{ messageKey: 'watch' }],
    },
    {
      name: 'the walls cross',
      classroom: room([], {
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 6000, y: 0 },
            { id: 'c3', x: 0, y: 5000 },
            { id: 'c4', x: 6000, y: 5000 },
          ],
        },
      }),
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
  ],
});

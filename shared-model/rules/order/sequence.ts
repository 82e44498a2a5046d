import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardsInTurn, sayBoard, sayStrand, sayThings } from '../../findings/sayBoard.ts';
import type { Mending } from '../../measures/order/insertion.ts';
import type { StrandTrouble } from '../../measures/order/inversions.ts';
import { hasBit, isToldBy } from '../../measures/order/relation.ts';
import type { Shortage } from '../../measures/order/reshelving.ts';
import type { OrderMeasure } from '../../measures/order.ts';
import { pointOfTray, sideOf } from '../../measures/placeWords.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** More than this at once is no fix but a new arrangement: the finding names them, and nothing is proposed. */
const MOST_MOVES = 200;

const options = z.strictObject({
  /** whether the order within practical life is judged */
  practicalLife: z.boolean().default(false),
});

export const sequence = defineRule({
  id: 'order/sequence',
  asks: 'Does the easier thing stand before the harder one?',
  why: 'A child who follows the shelf with eye and hand finds the next step alone only if the shelf goes from the easiest to the hardest.',
  tier: 'live',
  sources: ['M1912', 'H1914', 'common practice'],
  options,
  messages: {
    order: '{mend} {it} comes before {early} {told} ({strand}), but now stands after it, on {lateShelf}.{also}',
    short:
      'Make room for {what}, which would have to move: {board} is {lack} by {by}, and no other board on which it would be in step has room. {late} comes before {early} {told} ({strand}), but now stands after it, on {lateShelf}.{also}',
    circle: '{circle}: each is said to come after the one before it, round in a circle, so which comes first is not known.',
  },
  // The measure reads the class's setting of practicalLife itself, as for the report.
  judge({ scene, measures }): RuleResult {
    const order = measures.order();
    if (!order.inversions.isJudged && order.circles.length === 0) return doesNotApply;
    const troubles = order.troubles.map((trouble) => findingOf(scene, order, trouble));
    return { applies: true, findings: [...troubles, ...order.circles.map((ids) => circleFinding(scene, ids))] };
  },
});

const found = new WeakMap<StrandTrouble, { readonly said: RuleFinding; readonly finding: RuleFinding }>();

/** As long as the trouble is the same, what is said of it is; only where it is met may be elsewhere. */
function findingOf(scene: Scene, order: OrderMeasure, trouble: StrandTrouble): RuleFinding {
  const before = found.get(trouble);
  const early = order.relation.reading[trouble.early];
  const at = early && pointOfTray(scene, early);
  if (before && before.finding.at?.x === at?.x && before.finding.at?.y === at?.y) return before.finding;
  const said = before?.said ?? strandFinding(scene, order, trouble);
  const finding = at ? { ...said, at } : said;
  found.set(trouble, { said, finding });
  return finding;
}

function strandFinding(scene: Scene, order: OrderMeasure, trouble: StrandTrouble): RuleFinding {
  const trays = order.relation.reading;
  const at = (position: number): SceneTray => trays[position] as SceneTray;
  const [early, late] = [at(trouble.early), at(trouble.late)];
  const mending = trouble.moves.length > MOST_MOVES ? null : order.mend(trouble);
  const moving = (mending?.moves ?? trouble.moves).map(at);
  const worst = [...(mending?.shortages ?? [])].sort((p, q) => q.by - p.by)[0];
  const told = howTold(scene, order, early, late);
  const nameOf = namesOnce(scene, trouble.strand);
  const boardOf = boardsInTurn();
  const isShort = worst !== undefined && worst.by > 0;
  // Named in the order in which the message has them, and only what it has: what comes first is named in full.
  const mend = isShort ? '' : sayMend(scene, mending, moving, { nameOf, boardOf });
  const lateName = atStart(nameOf(late));
  const earlyName = nameOf(early);
  const also = sayAlso(order, trouble, moving, nameOf);
  return {
    outcome: 'problem',
    severity: trouble.isSure ? 'should' : 'note',
    messageKey: isShort ? 'short' : 'order',
    data: {
      strand: sayStrand(trouble.strand || early.material.area || 'own order'),
      lateShelf: isSameBoard(early, late) ? 'the same board' : shelfOf(scene, late, boardOf),
      early: earlyName,
      late: lateName,
      // What was just told to be put somewhere is not named again in full.
      it: mending?.places.length === 1 && mending.places[0]?.material === late.material.id ? 'It' : lateName,
      told: told.words,
      what: sayThings(moving.map(({ material }) => material.name)),
      also,
      mend,
      ...(worst && lackOf(scene, worst)),
    },
    // What it is of stays the same, whichever of the trays is moved to mend it.
    subjects: trouble.moves.map((position) => at(position).material.id),
    // What its words begin with: where a mend was found they tell what goes where.
    trays: [...new Set([...(mending?.places ?? []).map(({ material }) => material), ...moving.map(({ material }) => material.id)])],
    part: trouble.strand,
    measured: { value: trouble.moves.length, unit: 'materials' },
    needed: { value: 0, unit: 'materials' },
    sources: told.sources,
    ...(!worst && mending && mending.placements.length > 0 && { fix: fixOf(moving, mending) }),
  };
}

/** Names a thing: in full with its step at first, "step 3" once it was. */
type NameOf = (tray: SceneTray) => string;

/** How the parts of a message call things and boards. */
interface Say {
  readonly nameOf: NameOf;
  readonly boardOf: typeof sayBoard;
}

/** Long names are told once. A step stands for a thing only where nothing else of the strand has that step; it stands on the front. */
function namesOnce({ classroom }: Scene, strand: string): NameOf {
  const times = new Map<number, number>();
  for (const { strand: its, step } of classroom.materials)
    if (its.trim() === strand && typeof step === 'number') times.set(step, (times.get(step) ?? 0) + 1);
  const told = new Set<string>();
  return ({ material: { id, name, step, strand: its } }) => {
    if (strand === '' || its.trim() !== strand || typeof step !== 'number' || times.get(step) !== 1) return name;
    if (told.has(id)) return `step ${step}`;
    told.add(id);
    return `${name}, step ${step},`;
  };
}

function shelfOf(scene: Scene, { board }: SceneTray, boardOf: typeof sayBoard): string {
  const side = board && sideOf(scene, board);
  return side && board ? boardOf(side, board) : 'its shelf';
}

const atStart = (words: string): string => words.replace(/^step /, 'Step ');

const isSameBoard = (p: SceneTray, q: SceneTray): boolean => p.board !== null && p.board === q.board;

function howTold(scene: Scene, { relation }: OrderMeasure, early: SceneTray, late: SceneTray): { words: string; sources: string[] } {
  const isTold = (grade: 3 | 2) => isToldBy(relation, scene.classroom.materials, late.material.id, early.material.id, grade);
  if (isTold(3)) return { words: 'by the handbooks', sources: ['M1912', 'H1914'] };
  if (isTold(2)) return { words: 'by the class’s own steps', sources: ['class rule'] };
  return { words: 'by common practice', sources: ['common practice'] };
}

const lacks: Readonly<Record<Shortage['what'], string>> = { width: 'too short', depth: 'not deep enough', height: 'too low' };

function lackOf(scene: Scene, { board, what, by }: Shortage) {
  const side = sideOf(scene, board);
  return { board: side ? sayBoard(side, board) : 'the board', lack: lacks[what], by: mm(by) };
}

/** "Also the wrong way round: the board before the cards." For what moves and is not of the first pair. */
function sayAlso({ relation, inversions }: OrderMeasure, trouble: StrandTrouble, moving: readonly SceneTray[], nameOf: NameOf): string {
  const { reading, words, columnOf } = relation;
  const nameAt = (position: number): string => {
    const tray = reading[position];
    return tray ? nameOf(tray) : '';
  };
  const told = new Set([trouble.early, trouble.late]);
  const pairs = new Map<number, number[]>();
  for (const { material } of moving) {
    const position = columnOf.get(material.id) ?? -1;
    if (position === -1 || told.has(position)) continue;
    const isPair = (p: number, q: number): boolean => hasBit(inversions.rows, words, p, q);
    const behind = isPair(trouble.early, position) ? -1 : reading.findIndex((_, q) => isPair(position, q));
    const before = behind === -1 ? reading.findIndex((_, p) => isPair(p, position)) : -1;
    const [early, late] = behind === -1 ? [isPair(trouble.early, position) ? trouble.early : before, position] : [position, behind];
    if (early === -1) continue;
    for (const each of [early, late]) told.add(each);
    pairs.set(early, [...(pairs.get(early) ?? []), late]);
  }
  if (pairs.size === 0) return '';
  const pairsTold = ` Also the wrong way round: ${[...pairs].map(([early, late]) => `${nameAt(early)} before ${sayThings(late.map(nameAt))}`).join('; ')}.`;
  // A step in commas at the end of a part needs no second one.
  return pairsTold.replace(/,([.;])/g, '$1');
}

/** Places told one by one. */
const MOST_PLACES = 3;

function sayMend(scene: Scene, mending: Mending | null, moving: readonly SceneTray[], say: Say): string {
  if (mending && mending.places.length > 0) return sayWhere(scene, mending, say);
  return `Move ${sayThings(moving.map(({ material }) => material.name))}.`;
}

/** "Put Pink cubes, step 4, on the top board of Size and touch, right of Blocks." */
function sayWhere(scene: Scene, { places }: Mending, { nameOf, boardOf }: Say): string {
  const plain = (id: string): string => scene.materialById.get(id)?.name ?? id;
  const inFull = (id: string): string => {
    const tray = scene.stands.get(id);
    return tray ? nameOf(tray) : plain(id);
  };
  // One more is told as soon as counted.
  const told = places.slice(0, places.length === MOST_PLACES + 1 ? undefined : MOST_PLACES).map(({ material, side, board, behind }) => {
    const next = behind === null ? 'at its left end' : `right of ${plain(behind)}`;
    return `${inFull(material)} on ${boardOf(side, board)}, ${next}`;
  });
  const more = places.length - told.length;
  return `Put ${told.join('; ')}${more === 0 ? '' : `; and move ${more} more`}.`;
}

function fixOf(moving: readonly SceneTray[], { placements, places }: Mending): Fix {
  const [first] = places;
  const names = sayThings(moving.map(({ material }) => material.name));
  const where = places.length === 1 && first ? ` to ${sayBoard(first.side, first.board)}` : '';
  return { label: `Do it: ${names}${where || ' in order'}`, edits: placements.map((placement) => ({ do: 'place', placement })) };
}

function circleFinding(scene: Scene, ids: readonly string[]): RuleFinding {
  const names = ids.map((id) => scene.materialById.get(id)?.name ?? id);
  return {
    outcome: 'cannot-tell',
    severity: 'should',
    messageKey: 'circle',
    data: { circle: [...names, names[0]].join(', then ') },
    subjects: ids,
    part: 'circle',
    sources: ['class rule'],
    missing: [`say which of ${sayThings(names)} comes first: take one of them out of what another comes after, or set their steps`],
  };
}

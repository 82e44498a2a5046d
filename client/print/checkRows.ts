import type { FindingGroup } from '#model/analysis/groupFindings.ts';
import type { Report } from '#model/analysis/report.ts';
import { sayLeftState } from '#model/analysis/sayLeftState.ts';
import { questions } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sourceText } from '#model/standards/sources.ts';
import { leftGroups } from '../checks/leftGroups.ts';
import { sayAnswer } from '../checks/sayAnswer.ts';
import { sayFigures } from '../checks/sayFigures.ts';
import { sayLeft } from '../checks/sayLeft.ts';
import { sayMats } from '../checks/sayMats.ts';
import { sayWhere } from '../checks/sayWhere.ts';
import { shortMessage } from '../checks/shortMessage.ts';
import { type QuestionState, questionIds, questionOf, questionStates, unanswered } from '../checks/sortFindings.ts';
import { sourceLetters } from '../checks/sourceLetters.ts';
import { wantedOnce } from '../checks/wantedOnce.ts';
import { severityWord } from '../ui/SeverityMark.tsx';
import type { FlowRow } from './flow.ts';
import { line, type Mark, type Measure, weights, words } from './marks.ts';
import type { PrintInput } from './pageTypes.ts';
import { severityMark, unknownMark } from './severityMark.ts';
import { headRow, leading, spaceRow, textRows } from './table.ts';
import { tickBox } from './tickBox.ts';
import { CAUTION } from './titleBlock.ts';
import { wrapText } from './wrapText.ts';

const DECIDES = 'Figures help to plan. Your local authority decides.';
const SIZE = 2.6;
const ASIDE = 2.3;
/** mm: tick box, mark with word, figures at the right */
const WIDE = { tick: 5.5, mark: 16.5, figures: 36, fewFigures: 25 } as const;

interface Look {
  readonly width: number;
  readonly measure: Measure;
  /** Without reasons: beside a plan. */
  readonly isShort: boolean;
  readonly classroom: Classroom;
  readonly scene: Scene;
}

/** The list of checks: the nine questions with what was found, what to measure, what was left. `isShort`: without reasons and what was left. */
export function checkRows(
  { scene, report, measure }: Pick<PrintInput, 'scene' | 'report' | 'measure'>,
  width: number,
  isShort = false,
): FlowRow[] {
  if (!report) return textRows('The checks are still being worked out.', width, measure, SIZE);
  const { classroom } = scene;
  const look: Look = { width, measure, isShort, classroom, scene };
  const states = questionStates(report);
  const letters = sourceLetters(states.flatMap(({ problems }) => problems.map(({ lead }) => lead)));
  return [
    isShort ? headRow('Checks', width, 5) : headWithCaution(width),
    ...states.flatMap((state) => questionRows(look, state, report, letters)),
    ...measureRows(look, report),
    ...(isShort ? [] : leftRows(look, report)),
    ...sourceRows(look, letters),
  ];
}

/** The rest of the caution stands at the foot of each page of the list. */
function headWithCaution(width: number): FlowRow {
  const head = headRow('Checks', width, 5);
  return { ...head, draw: (x, y) => [...head.draw(x, y), words(DECIDES, x + width, y + 4.6, { size: ASIDE, align: 'end' })] };
}

/** A question's own head, and the one that says that it goes on. */
function headsOf(text: string, width: number): { head: FlowRow; again: FlowRow } {
  return { head: headRow(text, width, 3.6), again: headRow(`${text} (continued)`, width, 3.6) };
}

function questionRows(look: Look, state: QuestionState, report: Report, letters: ReadonlyMap<string, string>): FlowRow[] {
  const { width, measure } = look;
  const { head, again } = headsOf(state.asks, width);
  const mats = state.id === 'floor' ? sayMats(report) : null;
  const said = [
    ...(state.problems.length === 0 ? [sayAnswer(state.answer, false)] : []),
    ...(state.problems.length > 0 && state.unknown > 0 ? ['Something is not known: see "Measure these next".'] : []),
    ...(mats === null ? [] : [mats]),
  ];
  return [
    head,
    ...state.problems.flatMap((group) => findingRows(look, group, letters, again)),
    ...said.flatMap((text) => textRows(text, width, measure, SIZE, [again])),
    spaceRow(2.2),
  ];
}

function findingRows(look: Look, { lead, others }: FindingGroup, letters: ReadonlyMap<string, string>, again: FlowRow): FlowRow[] {
  const { width, measure, classroom } = look;
  const figures = sayFigures(lead.measured, lead.needed, classroom.display.units);
  const x0 = WIDE.tick + WIDE.mark;
  const wide = look.isShort ? WIDE.fewFigures : WIDE.figures;
  const inner = width - x0 - wide;
  const message = wrapText(shortMessage(lead.message, figures), inner, measure, SIZE);
  const measured = wrapText(figures?.measured ?? '', wide - 2, measure, SIZE, 650);
  const needed = wrapText(figures?.needed ?? '', wide - 2, measure, ASIDE);
  const refs = lead.sources.flatMap((source) => letters.get(source) ?? []).join(', ');
  const where = [
    sayWhere(lead, look.scene),
    others.length > 0 ? `${others.length} more at the same place` : '',
    refs === '' ? '' : `see ${refs}`,
  ];
  const asides = [where.filter(Boolean).join(' · '), ...(look.isShort ? [] : [lead.why])].filter((text) => text !== '');
  const figuresHigh = measured.length * leading(SIZE) + needed.length * leading(ASIDE);
  const main: FlowRow = {
    height: Math.max(message.length * leading(SIZE), figuresHigh - (asides.length > 0 ? leading(ASIDE) : 0), 4) + 0.8,
    heads: [again],
    isHead: asides.length > 0,
    draw: (x, y) => [
      ...tickBox(x, y + 0.5),
      ...severityMark(lead.severity, x + WIDE.tick + 1.5, y + 0.8 + SIZE / 2, 2.6),
      words(severityWord[lead.severity], x + WIDE.tick + 3.8, y + 0.8 + SIZE / 2, { size: SIZE, weight: 650 }),
      ...column(message, x + x0, y + 0.5, SIZE, 400, 'start'),
      ...column(measured, x + width, y + 0.5, SIZE, 650, 'end'),
      ...column(needed, x + width, y + 0.5 + measured.length * leading(SIZE), ASIDE, 400, 'end'),
    ],
  };
  const lines = asides.flatMap((text) => wrapText(text, inner, measure, ASIDE));
  return [main, ...lines.map((text) => lineRow(text, x0, ASIDE, again)), ruleRow(width, again)];
}

function column(lines: readonly string[], x: number, y: number, size: number, weight: number, align: 'start' | 'end'): Mark[] {
  return lines.map((text, i) => words(text, x, y + leading(size) * (i + 0.5), { size, weight, align }));
}

const lineRow = (text: string, indent: number, size: number, again: FlowRow): FlowRow => ({
  height: leading(size),
  heads: [again],
  draw: (x, y) => [words(text, x + indent, y + leading(size) / 2, { size })],
});

const ruleRow = (width: number, again: FlowRow): FlowRow => ({
  height: 1.4,
  heads: [again],
  isGap: true,
  draw: (x, y) => [
    line(
      [
        { x, y: y + 0.8 },
        { x: x + width, y: y + 0.8 },
      ],
      { weight: weights.hatch },
    ),
  ],
});

/** What could not be told: what to measure or answer, to be ticked off. */
function measureRows(look: Look, report: Report): FlowRow[] {
  const unknown = unanswered(report);
  if (unknown.length === 0) return [];
  const { width, measure } = look;
  const { head, again } = headsOf('Measure these next', width);
  const x0 = WIDE.tick + 4;
  const rows = wantedOnce(unknown).flatMap(({ wanted, finding }): FlowRow[] => {
    const [first = '', ...rest] = wrapText(`Not known: ${wanted}`, width - x0, measure, SIZE);
    const question = questionIds.find((id) => id === questionOf(finding.rule));
    return [
      {
        height: 4,
        heads: [again],
        isHead: true,
        draw: (x, y) => [
          ...tickBox(x, y + 0.4),
          unknownMark(x + WIDE.tick + 1.5, y + 2.1, 2.8),
          words(first, x + x0, y + 2.1, { size: SIZE }),
        ],
      },
      ...rest.map((text) => lineRow(text, x0, SIZE, again)),
      ...(look.isShort ? [] : [lineRow(`for: ${question ? questions[question] : finding.rule}`, x0, ASIDE, again)]),
      ruleRow(width, again),
    ];
  });
  return [head, ...rows, spaceRow(2.2)];
}

/** What was left as it is, with the reason, by whom and when. */
function leftRows(look: Look, report: Report): FlowRow[] {
  const { width, measure, classroom } = look;
  if (classroom.left.length === 0) return [];
  const { head, again } = headsOf('Left as they are', width);
  const rows = leftGroups(classroom.left, report.findings).flatMap(({ entry, keys, finding }): FlowRow[] => {
    const does = report.left?.find(({ key }) => key === entry.key)?.does ?? (finding ? 'here' : 'nothing');
    const what = [finding?.message, sayLeftState({ does })].filter(Boolean).join(' ');
    const reason = entry.reason ? `“${entry.reason}”` : 'No reason was given.';
    const more = keys.length > 1 ? `and ${keys.length - 1} more at the same place. ` : '';
    const lines = [
      ...wrapText(what, width, measure, SIZE).map((text) => ({ text, size: SIZE })),
      ...wrapText(`${more}${reason} ${sayLeft(entry)}`, width, measure, ASIDE).map((text) => ({ text, size: ASIDE })),
    ];
    return [...lines.map(({ text, size }) => lineRow(text, 0, size, again)), ruleRow(width, again)];
  });
  return [head, ...rows, spaceRow(2.2)];
}

function sourceRows({ width, measure, isShort }: Look, letters: ReadonlyMap<string, string>): FlowRow[] {
  const { head, again } = headsOf('Sources', width);
  const rows = [...letters].flatMap(([source, letter]) => textRows(`${letter}  ${sourceText(source)}`, width, measure, ASIDE, [again]));
  const caution = isShort ? textRows(`${CAUTION} ${DECIDES}`, width, measure, ASIDE, [again]) : [];
  return [...(rows.length > 0 ? [head, ...rows, spaceRow(1.5)] : []), ...caution];
}

import { memo, useMemo, useRef } from 'react';
import { areas } from '#model/catalogue/areas.ts';
import type { Scene } from '#model/scene/types.ts';
import { type BelongsAt, isLeftOf } from '../../front/orderMoves.ts';
import { sideName } from '../../front/shelfNames.ts';
import { useBoxSize } from '../../front/useBoxSize.ts';
import { AreaBadge } from '../../ui/AreaBadge.tsx';
import { oneStop } from '../../ui/oneStop.ts';
import { threadLayout } from './threadLayout.ts';
import { buildThreads, type Thread } from './threads.ts';

interface Props {
  readonly scene: Scene;
  readonly moves: ReadonlyMap<string, BelongsAt | null>;
  readonly area: string | null;
  readonly chosen: string | null;
  /** Only the threads of what is shown or chosen. */
  readonly isFolded: boolean;
  readonly onArea: (area: string | null) => void;
  readonly onChoose: (id: string) => void;
}

/** Each area as one line of steps, cut by the shelves; what is on the table as dashed rings beside it. */
export function Threads({ scene, moves, area, chosen, isFolded, onArea, onChoose }: Props) {
  const threads = useMemo(() => buildThreads(scene, moves), [scene, moves]);
  const box = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(box);
  const holds = (thread: Thread): boolean => chosen !== null && thread.parts.some((part) => part.ids.includes(chosen));
  const shown = isFolded ? threads.filter((thread) => thread.key === area || holds(thread)) : threads;
  return (
    <div className="threads">
      <div ref={box} className="threads-measure" aria-hidden="true" />
      {shown.length > 0 && (
        <p className="threads-table-word label" aria-hidden="true">
          on the table
        </p>
      )}
      <ul ref={oneStop}>
        {shown.map((thread) => (
          <ThreadRow
            key={thread.key}
            {...{ scene, moves, thread, width, onArea, onChoose }}
            isShown={area === thread.key}
            chosen={holds(thread) ? chosen : null}
          />
        ))}
      </ul>
    </div>
  );
}

interface RowProps extends Omit<Props, 'area' | 'isFolded'> {
  readonly thread: Thread;
  readonly width: number;
  readonly isShown: boolean;
}

const LINE = 33;

const ThreadRow = memo(function ThreadRow({ scene, moves, thread, width, isShown, chosen, onArea, onChoose }: RowProps) {
  const drawn = useMemo(() => threadLayout(thread, Math.max(120, width)), [thread, width]);
  const said = [
    `${thread.count} materials`,
    thread.onTable.length > 0 ? `${thread.onTable.length} on the table` : '',
    thread.misplaced > 0 ? `${thread.misplaced} out of step` : '',
  ].filter((part) => part !== '');
  return (
    <li className="thread" data-shown={isShown || undefined}>
      <button type="button" className="thread-name" aria-pressed={isShown} onClick={() => onArea(isShown ? null : thread.key)}>
        <span aria-hidden="true">
          <AreaBadge {...badgeOf(thread.key)} />
        </span>
        <span>
          {thread.name}
          <span className="only-heard">: {said.join(', ')}</span>
        </span>
      </button>
      {/* The table below is the same in words. */}
      <div className="thread-line" aria-hidden="true">
        <svg width={Math.max(120, width)} height={drawn.lines * LINE} role="presentation">
          {drawn.runs.map((run) => {
            const y = run.line * LINE + 21;
            return (
              <g key={`${run.part}/${run.line}/${run.from}`} stroke="var(--ink)" strokeWidth="1.2" fill="none">
                <path
                  d={`M${run.from} ${y}H${run.to}${run.isStart ? `M${run.from} ${y - 5}v10` : ''}${run.isEnd ? `M${run.to} ${y - 5}v10` : ''}`}
                />
                {run.isStart && (
                  <text x={run.from + 2} y={y - 10} fontSize="10.5" fill="var(--pencil-text)" stroke="none">
                    {sideName(scene, (thread.parts[run.part] as Thread['parts'][number]).side)}
                  </text>
                )}
              </g>
            );
          })}
          {drawn.marks.map((mark) => {
            const y = mark.line * LINE + 21;
            const title = scene.materialById.get(mark.id)?.name ?? '';
            return (
              // biome-ignore lint/a11y/noStaticElementInteractions: a pointer's short cut; the table's rows are the keyboard's way
              <g key={mark.id} className="thread-mark" onClick={() => onChoose(mark.id)}>
                <title>{title}</title>
                <rect x={mark.x - 6} y={y - 12} width="12" height="24" fill="transparent" />
                {moves.has(mark.id) ? (
                  <rect x={mark.x - 4.5} y={y - 4.5} width="9" height="9" fill="var(--should-text)" />
                ) : (
                  <circle cx={mark.x} cy={y} r="3.7" fill="var(--paper)" stroke="var(--ink)" strokeWidth="1.2" />
                )}
                {chosen === mark.id && <circle cx={mark.x} cy={y} r="7.5" fill="none" stroke="var(--blue)" strokeWidth="2.2" />}
              </g>
            );
          })}
          <Arcs {...{ drawn, moves, thread, scene }} />
        </svg>
      </div>
      <span className="thread-table" aria-hidden="true">
        {thread.onTable.slice(0, 3).map((id) => (
          <svg key={id} width="13" height="13" viewBox="0 0 13 13" role="presentation">
            <circle cx="6.5" cy="6.5" r="4.6" fill="none" stroke="var(--pencil)" strokeWidth="1.4" strokeDasharray="2 1.6" />
          </svg>
        ))}
        {thread.onTable.length > 3 && <span className="label">+{thread.onTable.length - 3}</span>}
      </span>
      <b className="thread-count" aria-hidden="true">
        {thread.count}
      </b>
    </li>
  );
});

/** Area and strand as the badge wants them. */
function badgeOf(key: string): { area: string; strand?: string } {
  if (key === 'AR') return { area: 'culture', strand: 'art' };
  return { area: areas.find((area) => area.code === key)?.id ?? (key === '–' ? '' : key) };
}

interface ArcProps {
  readonly drawn: ReturnType<typeof threadLayout>;
  readonly moves: Props['moves'];
  readonly thread: Thread;
  readonly scene: Scene;
}

/** Blue arcs from what is out of step to where it belongs, while both ends lie on one line of the thread. */
function Arcs({ drawn, moves, thread, scene }: ArcProps) {
  return drawn.marks.map((mark) => {
    const to = moves.get(mark.id);
    const part = to && thread.parts.find((each) => each.side.piece.id === to.piece && each.side.side === to.side);
    if (!to || !part) return null;
    const stands = part.ids.filter((id) => id !== mark.id && !moves.has(id));
    const before = stands.filter((id) => comesBefore(scene, part, id, to));
    const last = before.at(-1);
    const neighbour = drawn.marks.find((each) => each.id === (last ?? stands[0]));
    if (!neighbour || neighbour.line !== mark.line) return null;
    const x = neighbour.x + (last ? 9 : -9);
    const y = mark.line * LINE + 26;
    const sag = Math.min(8, 3 + Math.abs(x - mark.x) / 30);
    return (
      <path
        key={mark.id}
        d={`M${mark.x} ${y}C${mark.x} ${y + sag} ${x} ${y + sag} ${x} ${y}m-3 3l3 -4l3 4`}
        fill="none"
        stroke="var(--blue)"
        strokeWidth="1.3"
      />
    );
  });
}

function comesBefore(scene: Scene, part: Thread['parts'][number], id: string, to: BelongsAt): boolean {
  const tray = scene.stands.get(id);
  const boards = part.side.boards;
  const target = boards.findIndex((board) => (board.level?.id ?? null) === to.level);
  const here = tray?.board ? boards.indexOf(tray.board) : -1;
  if (here !== target) return here < target;
  const isLeft = isLeftOf({ id, x: tray?.placement.x ?? 0 }, to);
  return isLeft !== (scene.classroom.display.readingDirection === 'rtl');
}

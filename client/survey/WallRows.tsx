import { useEffect, useRef } from 'react';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { Select } from '../ui/Select.tsx';
import { type Bend, changeWall, type Draft, type DraftWall, insertWall, newWall, takeWallOut } from './draft.ts';
import { sayChange, sayTurn, sayWallTurned } from './saySurvey.ts';
import { changesOf, isMistake, lengthOf, turnedOf, type Walk, walkOf } from './walk.ts';

const bends: readonly { value: Bend; text: string }[] = [
  { value: 'right', text: 'right 90°' },
  { value: 'left', text: 'left 90°' },
  { value: 'straight', text: 'straight on' },
  { value: 'angle', text: 'by an angle' },
  { value: 'right-diagonals', text: 'right, by diagonals' },
  { value: 'left-diagonals', text: 'left, by diagonals' },
];

interface Props {
  readonly draft: Draft;
  readonly walk: Walk;
  readonly units: LengthUnits;
  readonly current: string | null;
  readonly onCurrent: (corner: string) => void;
  readonly onChange: (change: (draft: Draft) => Draft) => Draft;
  /** The walk has come round and closes: the keys go on to what to do with it. */
  readonly onRound: () => void;
}

/** The walls in the order of the walk, a row each. Enter goes on to the next one, and after the last adds one until the walk comes round and closes as well as a tape can. */
export function WallRows({ draft, walk, units, current, onCurrent, onChange, onRound }: Props) {
  const table = useRef<HTMLTableElement>(null);
  const wanted = useRef<string | null>(null);
  useEffect(() => {
    if (wanted.current === null) return;
    lengthFieldOf(table.current, wanted.current)?.focus();
    wanted.current = null;
  });

  function goOn(corner: string, isTyped: boolean): void {
    const index = draft.walls.findIndex((wall) => wall.corner === corner);
    const next = draft.walls[index + 1];
    if (next) {
      lengthFieldOf(table.current, next.corner)?.focus();
      return;
    }
    // What was typed a moment ago is in the draft by now, but not yet in what is shown.
    const now = onChange((latest) => latest);
    const round = walkOf(now);
    // Four turns to the right do not make a room that is open by metres: there are more walls, or a turn is wrong.
    const isOver = round.isRound && !isMistake(round);
    if (isOver || (!isTyped && !round.isRound)) {
      onRound();
      return;
    }
    // An empty row is there to go on with; how far it is open stands beside it.
    if (!isTyped) return;
    const made = newWall();
    wanted.current = made.corner;
    onChange(insertWall(corner, made));
  }

  const index = draft.walls.findIndex((wall) => wall.corner === current);
  const number = index + 1;
  const changes = changesOf(walk);
  const turned = turnedOf(walk);
  return (
    <>
      <table ref={table} className="list-table walk-table">
        <thead className="only-heard">
          <tr>
            <th scope="col">Wall</th>
            <th scope="col">Length</th>
            <th scope="col">Then it turns</th>
            <th scope="col">Spreading changes it by</th>
          </tr>
        </thead>
        <tbody>
          {draft.walls.map((wall, i) => (
            <WallRow
              key={wall.corner}
              number={i + 1}
              wall={wall}
              units={units}
              isCurrent={wall.corner === current}
              change={draft.isSpread || walk.spread ? (changes[i] ?? null) : null}
              turned={sayWallTurned(turned[i] ?? null)}
              said={sayTurn(walk, i)}
              onCurrent={() => onCurrent(wall.corner)}
              onSet={(set) => onChange(changeWall(wall.corner, set))}
              onEnter={(isTyped) => goOn(wall.corner, isTyped)}
            />
          ))}
        </tbody>
      </table>
      <div className="verbs">
        <Button
          onPress={() => {
            const made = newWall();
            wanted.current = made.corner;
            onChange(insertWall(index < 0 ? null : current, made));
          }}
        >
          {index < 0 || index === draft.walls.length - 1 ? 'Add a wall' : `Insert a wall after wall ${number}`}
        </Button>
        <Button
          kind="quiet"
          isDisabled={index < 0 || draft.walls.length < 2}
          onPress={() => {
            const heir = draft.walls[index + 1] ?? draft.walls[index - 1];
            if (current === null || !heir) return;
            onChange(takeWallOut(current));
            onCurrent(heir.corner);
          }}
        >
          {index < 0 ? 'Take a wall out' : `Take wall ${number} out`}
        </Button>
      </div>
    </>
  );
}

const lengthFieldOf = (table: HTMLElement | null, corner: string): HTMLInputElement | null =>
  table?.querySelector<HTMLInputElement>(`[data-wall="${CSS.escape(corner)}"] input`) ?? null;

interface RowProps {
  readonly number: number;
  readonly wall: DraftWall;
  readonly units: LengthUnits;
  readonly isCurrent: boolean;
  readonly change: number | null;
  /** How far spreading turns the wall, in words. */
  readonly turned: string | null;
  /** What the adjustment makes of the turn; null: nothing is adjusted. */
  readonly said: string | null;
  readonly onCurrent: () => void;
  readonly onSet: (set: Partial<DraftWall>) => void;
  readonly onEnter: (isTyped: boolean) => void;
}

function WallRow({ number, wall, units, isCurrent, change, turned, said, onCurrent, onSet, onEnter }: RowProps) {
  return (
    <tr
      data-wall={wall.corner}
      className={isCurrent ? 'current' : undefined}
      aria-current={isCurrent || undefined}
      onFocus={onCurrent}
      onKeyDown={(event) => {
        // A list of choices does nothing with Enter; here it goes on, as in the field of the length.
        if (event.key !== 'Enter' || !(event.target instanceof HTMLSelectElement)) return;
        event.preventDefault();
        onEnter(lengthOf(wall) !== null);
      }}
    >
      <td>
        <LengthField
          label={`Wall ${number}`}
          value={wall.length}
          units={units}
          least={10}
          mayBeEmpty
          isLong
          placeholder={wall.drawn === null ? '' : `drawn ${sayLength(wall.drawn, units)}`}
          // What cannot be read is no length, and is not drawn as one.
          onTyping={(length) => onSet({ length })}
          onCommit={(length) => onSet({ length })}
          onEnter={(length) => onEnter(length !== null || wall.drawn !== null)}
        />
      </td>
      <td>
        <div className="walk-turn">
          <Select label="then" value={wall.bend} options={bends} onChange={(bend) => onSet({ bend })} echo={said} />
          {wall.bend === 'angle' && (
            <NumberField
              label="° right, − left"
              value={wall.angle}
              least={-179}
              most={179}
              isWhole={false}
              onCommit={(angle) => angle !== null && onSet({ angle })}
            />
          )}
        </div>
      </td>
      <td className="walk-change">
        {change === null ? '' : sayChange(change, units)}
        {change !== null && turned && <div>{turned}</div>}
      </td>
    </tr>
  );
}

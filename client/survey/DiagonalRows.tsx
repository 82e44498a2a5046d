import { newId } from '#model/document/ids.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { Select } from '../ui/Select.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { changeDiagonals, type Draft, type DraftDiagonal } from './draft.ts';
import { sayChange } from './saySurvey.ts';
import type { Walk } from './walk.ts';

interface Props {
  readonly draft: Draft;
  readonly walk: Walk;
  readonly units: LengthUnits;
  readonly onChange: (change: (draft: Draft) => Draft) => Draft;
}

/** Lengths across the room, from any corner to any other: they tell angles, and check the walls. */
export function DiagonalRows({ draft, walk, units, onChange }: Props) {
  const corners = draft.walls.map(({ corner }, i) => ({ value: corner, text: `corner ${i + 1}` }));
  const set = (key: string, change: Partial<DraftDiagonal>) =>
    onChange(changeDiagonals((all) => all.map((one) => (one.key === key ? { ...one, ...change } : one))));
  // The fit lists the diagonals that were taped, in order.
  const taped = draft.diagonals.filter(({ from, to, length }) => length !== null && from !== to);
  function add() {
    const count = draft.walls.length;
    const known = new Set(draft.diagonals.map(({ from, to }) => [from, to].sort().join()));
    const pairs = draft.walls.flatMap((wall, i) =>
      draft.walls.slice(i + 2, i === 0 ? count - 1 : count).map((other) => [wall.corner, other.corner]),
    );
    const [from, to] = pairs.find((pair) => !known.has([...pair].sort().join())) ?? [draft.walls[0]?.corner, draft.walls[2]?.corner];
    if (from && to) onChange(changeDiagonals((all) => [...all, { key: newId('k'), from, to, length: null }]));
  }
  return (
    <>
      <p className="aside">
        Tape straight across from corner to corner. Two diagonals of four walls, or one across each slanted corner, tell angles that are not
        square; one more checks the walls and shows which was misread. Corner 1 is where wall 1 begins; the drawing bears the numbers.
      </p>
      {draft.diagonals.map(({ key, from, to, length }) => {
        const fitted = walk.fit?.loose.length === 0 ? walk.fit.diagonals[taped.findIndex((one) => one.key === key)] : undefined;
        return (
          <fieldset key={key} className="walk-thing" aria-label={`From ${nameOf(corners, from)} to ${nameOf(corners, to)}`}>
            <Select label="From" value={from} options={corners} onChange={(corner) => set(key, { from: corner })} />
            <Select label="to" value={to} options={corners} onChange={(corner) => set(key, { to: corner })} />
            <LengthField
              label="Across"
              value={length}
              units={units}
              least={10}
              mayBeEmpty
              onTyping={(mm) => mm !== null && set(key, { length: mm })}
              onCommit={(mm) => set(key, { length: mm })}
            />
            <TextLink onPress={() => onChange(changeDiagonals((all) => all.filter((one) => one.key !== key)))}>Take it out</TextLink>
            <span className="walk-change">
              {from === to
                ? 'From a corner to itself: choose another.'
                : fitted?.change == null
                  ? ''
                  : `fitted ${sayLength(Math.round(fitted.value), units)}, ${sayChange(fitted.change, units)}`}
            </span>
          </fieldset>
        );
      })}
      <div className="verbs">
        <Button isDisabled={draft.walls.length < 3} onPress={add}>
          Add a diagonal
        </Button>
        {draft.walls.length < 3 && <span className="aside">Type the walls first.</span>}
      </div>
    </>
  );
}

const nameOf = (corners: readonly { value: string; text: string }[], id: string): string =>
  corners.find(({ value }) => value === id)?.text ?? 'a corner';

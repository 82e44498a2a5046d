import { useState } from 'react';
import { newId } from '#model/document/ids.ts';
import type { Fixture, Opening } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { swings } from '../plan/ChosenFields.tsx';
import { fixtureKindName, nameOfFixture, nameOfOpening } from '../plan/describe.ts';
import { sizeFor } from '../plan/newThings.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { Select } from '../ui/Select.tsx';
import { TextField } from '../ui/TextField.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import type { Draft, DraftFixture, DraftOpening } from './draft.ts';

interface Props {
  readonly draft: Draft;
  readonly units: LengthUnits;
  readonly current: string | null;
  readonly onCurrent: (corner: string) => void;
  readonly onChange: (change: (draft: Draft) => Draft) => Draft;
}

const wallsOf = (draft: Draft) => draft.walls.map(({ corner }, i) => ({ value: corner, text: `wall ${i + 1}` }));

/** Doors, windows and passages by their distance from where the wall begins. */
export function OpeningRows({ draft, units, current, onCurrent, onChange }: Props) {
  const walls = wallsOf(draft);
  const here = walls.find(({ value }) => value === current) ?? walls[0];
  const set = (key: string, change: Partial<DraftOpening>) =>
    onChange((before) => ({ ...before, openings: before.openings.map((one) => (one.key === key ? { ...one, ...change } : one)) }));
  function add(kind: Opening['kind']) {
    if (!here) return;
    const { width } = sizeFor({ kind: 'opening', of: kind });
    const made: DraftOpening = {
      key: newId(kind),
      isNew: true,
      wall: here.value,
      kind,
      name: '',
      offset: 0,
      width,
      sill: kind === 'window' ? 900 : 0,
      swing: kind === 'door' ? 'in-left' : 'none',
    };
    onChange((before) => ({ ...before, openings: [...before.openings, made] }));
  }
  return (
    <>
      <p className="aside">
        As you pass them on the walk: from the corner where the wall begins to the nearer edge. A press on a wall of the picture chooses it.
      </p>
      {draft.openings.map((opening) => (
        <fieldset key={opening.key} className="walk-thing" aria-label={nameOfOpening(opening)}>
          <b>{nameOfOpening(opening)}</b>
          <Select label="On" value={opening.wall} options={walls} onChange={(wall) => set(opening.key, { wall })} />
          <LengthField
            label="Along wall"
            value={opening.offset}
            units={units}
            least={0}
            onCommit={(offset) => offset !== null && set(opening.key, { offset })}
          />
          <LengthField
            label="Wide"
            value={opening.width}
            units={units}
            onCommit={(width) => width !== null && set(opening.key, { width })}
          />
          {opening.kind === 'window' && (
            <LengthField
              label="Sill"
              value={opening.sill}
              units={units}
              least={0}
              onCommit={(sill) => sill !== null && set(opening.key, { sill })}
            />
          )}
          {opening.kind === 'door' && (
            <Select
              label="Opens, seen from inside"
              value={opening.swing}
              options={swings}
              onChange={(swing) => set(opening.key, { swing })}
            />
          )}
          {opening.kind !== 'window' && <TextField label="Leads to" value={opening.name} onCommit={(name) => set(opening.key, { name })} />}
          {opening.isNew && (
            <TextLink
              onPress={() => onChange((before) => ({ ...before, openings: before.openings.filter(({ key }) => key !== opening.key) }))}
            >
              Take it out
            </TextLink>
          )}
        </fieldset>
      ))}
      <div className="verbs walk-add">
        {here && <Select label="New ones on" value={here.value} options={walls} onChange={onCurrent} />}
        {(['door', 'window', 'passage'] as const).map((kind) => (
          <Button key={kind} onPress={() => add(kind)}>
            Add a {kind} {here ? `on ${here.text}` : ''}
          </Button>
        ))}
      </div>
    </>
  );
}

const kinds = (['column', 'built-in', 'sink', 'radiator', 'step', 'partition', 'hearth', 'other'] as const).map((value) => ({
  value,
  text: fixtureKindName(value),
}));

/** Columns, built-ins, sink, radiator and step by their distances from two walls. */
export function FixtureRows({ draft, units, current, onCurrent, onChange }: Props) {
  const [kind, setKind] = useState<Fixture['kind']>('column');
  const walls = wallsOf(draft);
  const at = Math.max(
    0,
    walls.findIndex(({ value }) => value === current),
  );
  const set = (key: string, change: Partial<DraftFixture>) =>
    onChange((before) => ({ ...before, fixtures: before.fixtures.map((one) => (one.key === key ? { ...one, ...change } : one)) }));
  function add() {
    const [wall, side] = [walls[at], walls[(at + walls.length - 1) % walls.length]];
    if (!wall || !side || wall === side) return;
    const { width, depth, height } = sizeFor({ kind: 'fixture', of: kind });
    const made: DraftFixture = {
      key: newId(kind),
      isNew: true,
      kind,
      name: '',
      wall: wall.value,
      gap: 0,
      side: side.value,
      along: 500,
      width,
      depth,
      height,
      turned: 0,
    };
    onChange((before) => ({ ...before, fixtures: [...before.fixtures, made] }));
  }
  return (
    <>
      <p className="aside">
        Each with its back to one wall, and its distance from that wall and from another one; both to the nearer edge.
      </p>
      {draft.fixtures.map((fixture) => (
        <fieldset key={fixture.key} className="walk-thing" aria-label={nameOfFixture(fixture)}>
          <b>{nameOfFixture(fixture)}</b>
          <Select label="Back to" value={fixture.wall} options={walls} onChange={(wall) => set(fixture.key, { wall })} />
          <LengthField
            label="Off it"
            value={fixture.gap}
            units={units}
            least={-100_000}
            onCommit={(gap) => gap !== null && set(fixture.key, { gap })}
          />
          <Select label="Also from" value={fixture.side} options={walls} onChange={(side) => set(fixture.key, { side })} />
          <LengthField
            label="Off that"
            value={fixture.along}
            units={units}
            least={-100_000}
            onCommit={(along) => along !== null && set(fixture.key, { along })}
          />
          <LengthField
            label="Long"
            value={fixture.width}
            units={units}
            onCommit={(width) => width !== null && set(fixture.key, { width })}
          />
          <LengthField
            label="Deep"
            value={fixture.depth}
            units={units}
            onCommit={(depth) => depth !== null && set(fixture.key, { depth })}
          />
          <LengthField
            label="High"
            value={fixture.height}
            units={units}
            mayBeEmpty
            placeholder="not known"
            onCommit={(height) => set(fixture.key, { height })}
          />
          {fixture.isNew && (
            <TextLink
              onPress={() => onChange((before) => ({ ...before, fixtures: before.fixtures.filter(({ key }) => key !== fixture.key) }))}
            >
              Take it out
            </TextLink>
          )}
        </fieldset>
      ))}
      <div className="verbs walk-add">
        <Select label="What" value={kind} options={kinds} onChange={setKind} />
        {walls[at] && <Select label="At" value={walls[at].value} options={walls} onChange={onCurrent} />}
        <Button isDisabled={walls.length < 3} onPress={add}>
          Add it{walls[at] ? ` at ${walls[at].text}` : ''}
        </Button>
      </div>
    </>
  );
}

import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { sourceText } from '#model/standards/sources.ts';
import { sayArea } from '#model/units/sayLength.ts';
import { useScene, useUnits } from '../session/hooks.ts';
import { Select } from '../ui/Select.tsx';
import { type Cell, floorRows } from './floorRows.ts';
import { SmallPlan } from './SmallPlan.tsx';
import { sayEachBare } from './sayEach.ts';

interface Props {
  readonly sets: readonly FloorPlaces[];
  readonly inForce: FloorPlaces;
  readonly other: FloorPlaces | null;
  readonly onCompare: (id: string) => void;
}

/** What each of two rules takes off the floor, item by item, and how many children that leaves room for. */
export function FloorThatCounts({ sets, inForce, other, onCompare }: Props) {
  const scene = useScene();
  const units = useUnits();
  const say = (m2: number | undefined) => (m2 === undefined ? '–' : sayArea(m2, units).replace(/ .*$/, ''));
  const sayChild = (set: FloorPlaces | null) => (set?.need ? sayEachBare(set.need, units) : '–');
  const others = inForce.counted?.others ?? 0;
  const hasOpen = [inForce, other].some((set) => (set?.counted?.open.length ?? 0) > 0);
  return (
    <div className="floor-counts">
      <header className="panel-head">
        <h2>Floor that counts</h2>
      </header>
      <div className="floor-counts-both">
        <SmallPlan scene={scene} counted={inForce.counted} />
        <div>
          <table className="list-table">
            <thead>
              <tr>
                <th scope="col">{units === 'metric' ? 'm²' : 'sq ft'}</th>
                <th scope="col" className="figure">
                  in force
                </th>
                <th scope="col" className="figure">
                  other
                </th>
              </tr>
            </thead>
            <tbody>
              <Row text="inside the walls" a={say(inForce.counted?.inside)} b={say(other?.counted?.inside)} />
              {floorRows(inForce, other).map((row) => (
                <Row key={row.text} text={row.text} a={sayCell(row.inForce, say)} b={sayCell(row.other, say)} />
              ))}
              {others > 0 && <Row text="other rooms of the class" a={`+ ${say(others)}`} b={`+ ${say(others)}`} />}
              <Row text="counted" a={sayCounted(inForce, say)} b={sayCounted(other, say)} isStrong />
              <Row text="a child" a={sayChild(inForce)} b={sayChild(other)} />
              <Row text="takes" a={sayTakes(inForce)} b={sayTakes(other)} isStrong />
            </tbody>
          </table>
          <p className="aside">
            Hatched: not counted by the rule in force.
            {hasOpen && ' “or 0”: the rule does not say and it was not answered; the lower figure takes it off.'}
          </p>
        </div>
      </div>
      <div className="form-row compare">
        <Select
          label="Compare with"
          value={other?.rules.id ?? ''}
          options={sets.slice(1).map((set) => ({ value: set.rules.id, text: `${set.rules.name}: ${sayTakes(set)}` }))}
          onChange={onCompare}
        />
        <p className="aside">
          In force: {inForce.rules.name}
          {sourceOf(inForce)}. {other && `Other: ${other.rules.name}${sourceOf(other)}. `}
          {inForce.need?.isBeyondTable && 'Some ages lie beyond the table; its nearest row was taken. '}
          {inForce.need?.isFromMemory && 'The figure a child is from memory. '}
          Not legal advice: your licensing authority decides.
        </p>
      </div>
    </div>
  );
}

function Row({ text, a, b, isStrong = false }: { text: string; a: string; b: string; isStrong?: boolean }) {
  return (
    <tr className={isStrong ? 'strong' : undefined}>
      <th scope="row">{text}</th>
      <td className="figure">{a}</td>
      <td className="figure aside">{b}</td>
    </tr>
  );
}

type Say = (m2: number | undefined) => string;

function sayCell(cell: Cell, say: Say): string {
  if (cell === null) return '–';
  return cell.isOpen ? `− ${say(cell.m2)} or 0` : `− ${say(cell.m2)}`;
}

function sayCounted(floor: FloorPlaces | null, say: Say): string {
  const counted = floor?.counted;
  if (!counted) return '–';
  return counted.most > counted.least ? `${say(counted.least)} to ${say(counted.most)}` : say(counted.least);
}

function sayTakes(floor: FloorPlaces | null): string {
  if (!floor || floor.byArea === null) return floor?.rules.missing[0] ?? 'not told';
  return floor.byAreaMost !== null && floor.byAreaMost > floor.byArea ? `${floor.byArea} to ${floor.byAreaMost}` : String(floor.byArea);
}

function sourceOf({ rules }: FloorPlaces): string {
  const source = rules.space?.source ?? rules.set?.deductionSource ?? null;
  return source === null ? '' : ` (${sourceText(source)})`;
}

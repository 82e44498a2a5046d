import { CRATE, CRATE_KG } from '#model/analysis/moveDay/practice.ts';
import { exitsOf } from '#model/measures/exits.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { MayChange } from '../session/MayChange.tsx';
import { sayCount } from '../text/sayCount.ts';
import { sayList } from '../text/sayList.ts';
import { NumberField } from '../ui/NumberField.tsx';
import type { Day } from './dayOf.ts';
import type { StepActions } from './stepActions.ts';

/** Who and what is needed on the day, and which doors stay clear. */
export function Wanted({ day, actions }: { readonly day: Day; readonly actions: StepActions }) {
  const { plan } = day;
  const { units } = plan.from.classroom.display;
  const adults = Math.max(1, ...plan.steps.map(({ people }) => people));
  const isFastened = plan.steps.some(({ unfasten, fasten }) => unfasten !== null || fasten === 'yes');
  const isSlid = plan.steps.some(({ path }) => path?.how === 'slide');
  const things = [
    plan.packed.crates.length > 0 ? sayCount(plan.packed.crates.length, 'crate') : null,
    'a tape',
    isSlid ? 'felt pads' : null,
    isFastened ? 'what the wall fastenings are undone and done up with' : null,
  ].filter((thing) => thing !== null);
  return (
    <section className="wanted" aria-label="What is wanted">
      <p>
        Wanted: <b>{adults === 1 ? '1 adult' : `${adults} adults`}</b>, {things.join(', ')}. {sayDoors(day)} No children in the room until
        every piece is fastened.
      </p>
      {plan.packed.crates.length > 0 && (
        <MayChange>
          <NumberField
            label="Most in one crate, kg"
            value={day.crateKg}
            least={1}
            most={50}
            isWhole={false}
            echo={`${CRATE_KG} kg is common practice, no source. A crate is ${sayLength(CRATE.long, units)} by ${sayLength(CRATE.wide, units)} inside, trays in two layers.`}
            onCommit={actions.setCrateKg}
          />
        </MayChange>
      )}
    </section>
  );
}

function sayDoors({ plan }: Day): string {
  const isCarried = plan.steps.some(
    ({ does, stands, unit }) => does === 'out' || does === 'in' || (does === 'aside' && !stands && !plan.units[unit ?? -1]?.isRug),
  );
  const exits = exitsOf(plan.from);
  const names = exits.map(({ raw }) => (raw.name ? `the ${raw.name} door` : 'the exit'));
  const through = isCarried
    ? 'What is put away or brought in goes through a door; the way to the others stays free.'
    : 'Nothing is carried through a door.';
  if (exits.length === 0) return `${through} No door is marked as an exit: mark them on the Room sheet.`;
  return `${through} Nothing is set aside before ${sayList(names)}: every way out stays free all through.`;
}

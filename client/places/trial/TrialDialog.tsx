import { useMemo, useState } from 'react';
import { addPromised } from '#model/measures/addPromised.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { tryPromised } from '#model/measures/trial.ts';
import { sourceText } from '#model/standards/sources.ts';
import { sayYearsAndMonths } from '#model/units/sayAge.ts';
import { useClassroom, useSession, useUnits } from '../../session/hooks.ts';
import { MayChange } from '../../session/MayChange.tsx';
import { sayCount } from '../../text/sayCount.ts';
import { isoToday, sayDay } from '../../text/sayDay.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { startAge } from './startAge.ts';
import { sayTrial, trialRows } from './trialRows.ts';
import { WhatChecksSay } from './WhatChecksSay.tsx';
import '../../styles/trial.css';

interface Props {
  readonly inForce: FloorPlaces;
  readonly byWork: number | null;
  readonly onClose: () => void;
}

const MOST_CHILDREN = 200;

/** What happens to floor, adults and fixtures when a child of some age comes. Nothing is changed until it is added. */
export function TrialDialog({ inForce, byWork, onClose }: Props) {
  const session = useSession();
  const classroom = useClassroom();
  const units = useUnits();
  const [years, setYears] = useState(() => String(Math.floor(startAge(classroom) / 12)));
  const [months, setMonths] = useState(() => String(startAge(classroom) % 12));
  const [count, setCount] = useState('1');
  const [from, setFrom] = useState('');
  const read = { years: wholeIn(years, 0, 18), months: wholeIn(months, 0, 11), count: wholeIn(count, 1, MOST_CHILDREN) };
  const promised = useMemo(() => {
    if (read.years === null || read.months === null || read.count === null) return null;
    // Who came on a day gone by is here now.
    return { months: read.years * 12 + read.months, count: read.count, from: from <= isoToday() ? null : from };
  }, [read.years, read.months, read.count, from]);
  const result = useMemo(() => promised && tryPromised(classroom, inForce.counted, promised), [classroom, inForce.counted, promised]);

  function add() {
    if (!promised) return;
    const newGroup = () => ({ id: `g${crypto.randomUUID().slice(0, 8)}`, name: sayYearsAndMonths(promised.months) });
    session.commands.changeClass(addPromised(classroom, promised, isoToday(), newGroup));
    session.announce(
      `Added: ${sayCount(promised.count, 'child', 'children')} of ${sayYearsAndMonths(promised.months)}. Take back undoes it.`,
    );
    onClose();
  }

  return (
    <Dialog title="If a child came" isOpen onClose={onClose} isWide>
      <p className="aside">A trial: nothing of the class is changed until you add it.</p>
      <div className="trial-fields">
        <Whole label="Age: years" value={years} onChange={setYears} isWrong={read.years === null} most={18} />
        <Whole label="and months" value={months} onChange={setMonths} isWrong={read.months === null} most={11} />
        <Whole label="How many come" value={count} onChange={setCount} isWrong={read.count === null} least={1} most={MOST_CHILDREN} />
        <Field label="On (empty: now)" echo={from !== '' && from <= isoToday() ? 'That day has come: counted as now.' : null}>
          {(wiring) => <input {...wiring} type="date" value={from} onChange={(event) => setFrom(event.target.value)} />}
        </Field>
      </div>
      {!result || !promised ? (
        <p>Give the age and how many, then it is said here what that does.</p>
      ) : (
        <>
          <p role="status" className="trial-said">
            {sayTrial(result, byWork, units).join(' ')}
          </p>
          <WhatChecksSay promised={promised} />
          <table className="list-table trial-table">
            <caption className="aside">
              {result.entry ? `From the children entered for ${sayDay(result.entry)}` : 'From the children of the class now'}; rule in
              force: {result.rules.name}
            </caption>
            <thead>
              <tr>
                <th scope="col">
                  <span className="only-heard">What</span>
                </th>
                <th scope="col" className="figure">
                  before
                </th>
                <th scope="col" className="figure">
                  with {promised.count === 1 ? 'her' : 'them'}
                </th>
              </tr>
            </thead>
            <tbody>
              {trialRows(result, byWork, units).map(({ text, before, after, isShort, wasShort }) => (
                <tr key={text} className={isShort ? 'short' : undefined}>
                  <th scope="row">{text}</th>
                  <td className="figure">
                    {before}
                    <Short isShort={wasShort} of={before} />
                  </td>
                  <td className="figure">
                    {before === after ? after : <b>{after}</b>}
                    <Short isShort={isShort} of={after} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="aside">
            {[inForce.rules.space?.source, inForce.rules.ratios?.source]
              .filter((source) => source !== undefined)
              .map((source) => `${sourceText(source)}. `)}
            Not legal advice: your licensing authority decides.
            {classroom.enrolment.length > 0 &&
              ` Added, ${promised.count === 1 ? 'she stands' : 'they stand'} in every entry of the year from that day on, older by the months between.`}
          </p>
        </>
      )}
      <div className="verbs">
        <MayChange>
          <Button kind="strong" isDisabled={!promised} onPress={add}>
            Add to the class
          </Button>
        </MayChange>
        <TextLink onPress={onClose}>Leave it as it is</TextLink>
      </div>
    </Dialog>
  );
}

/** Before and after alike. What says by how much it is too little says it all. */
function Short({ isShort, of }: { isShort: boolean; of: string }) {
  return isShort && !of.includes('too little') ? <span className="trial-short"> not enough</span> : null;
}

interface WholeProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly isWrong: boolean;
  readonly least?: number;
  readonly most: number;
}

/** A whole number that is followed while it is typed. */
function Whole({ label, value, onChange, isWrong, least = 0, most }: WholeProps) {
  return (
    <Field label={label} wrong={isWrong ? `A whole number from ${least} to ${most} is wanted here.` : null}>
      {(wiring) => (
        <input
          {...wiring}
          type="text"
          inputMode="numeric"
          autoComplete="off"
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

function wholeIn(text: string, least: number, most: number): number | null {
  if (!/^\s*\d{1,4}\s*$/.test(text)) return null;
  const number = Number(text);
  return number >= least && number <= most ? number : null;
}

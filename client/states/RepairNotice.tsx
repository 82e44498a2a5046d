import { useMemo, useState } from 'react';
import { createMender, type EntryMend, type Mender } from '#model/document/mendEntry.ts';
import { rawOf } from '#model/document/setAside.ts';
import type { NeedsRepair } from '#model/document/types.ts';
import { fileNameOf, saveText } from '../frame/saveFile.ts';
import { useMayChange, useSession, useUnits } from '../session/hooks.ts';
import { sayCount } from '../text/sayCount.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { isLengthField, nameOfPath, wordOfField } from './nameOfPath.ts';
import '../styles/states.css';

/** Entries that do not parse: where each is, what was found and expected, and what can be done about it. */
export function RepairNotice({ problems }: { readonly problems: readonly NeedsRepair[] }) {
  const [isOpen, setOpen] = useState(false);
  const count = problems.length;
  return (
    <div className="status-line trouble repair-line">
      <p>
        {sayCount(count, 'entry', 'entries')} of this classroom cannot be read.{' '}
        {count === 1 ? 'It is kept, but not drawn.' : 'They are kept, but not drawn.'}
      </p>
      <TextLink aria-expanded={isOpen} onPress={() => setOpen(!isOpen)}>
        {isOpen ? `Hide ${count === 1 ? 'it' : 'them'}` : 'Which?'}
      </TextLink>
      {isOpen && <Entries problems={problems} />}
    </div>
  );
}

function Entries({ problems }: { readonly problems: readonly NeedsRepair[] }) {
  const session = useSession();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the document is tried anew when its problems are others
  const mender = useMemo(() => createMender(session.document.doc), [session, problems]);
  return (
    <ul className="repair">
      {problems.map((problem) => (
        <Entry key={`${problem.path} ${problem.expected}`} problem={problem} mender={mender} />
      ))}
    </ul>
  );
}

function Entry({ problem, mender }: { readonly problem: NeedsRepair; readonly mender: Mender }) {
  const session = useSession();
  const mayChange = useMayChange();
  const mend = mender.mendOf(problem);
  const { thing, field, by, entry } = mend;
  const kind = nameOfPath(session, entry && thing[0] !== 'classroom' ? [...entry.path, entry.key] : thing);
  const own = ownName(rawOf(session.document.doc, problem.path));
  const name = own === '' || kind.includes(own) ? kind : `${kind.replace(/ without a name$/, '')} “${own}”`;
  const about = (
    <span className="only-heard">
      : {name}
      {field !== null && `, ${wordOfField(field)}`}
    </span>
  );

  function drop() {
    if (field !== null && session.commands.takeOut(thing, field))
      session.announce('Mended: what could not be read is left out. Take back brings it again.');
    else session.announce('It is gone meanwhile.');
  }

  return (
    <li className="repair-entry">
      <p>
        <b>{name}</b>
        {field !== null && !(entry && entry.key === field) && `, ${wordOfField(field)}`}: found {problem.found}, expected {problem.expected}
        . <span className="aside">{problem.path}</span>
      </p>
      {mayChange && (
        <div className="verbs">
          {by === 'drop' && <Button onPress={drop}>Mend it: as if it had not been given{about}</Button>}
          {by === 'figure' && field !== null && <Figure {...{ problem, mender, mend, field }} />}
          {entry ? (
            <TextLink onPress={() => takeOut(session, problem, mend, name)}>Take it out, and save a copy{about}</TextLink>
          ) : (
            <span className="aside">Something else stands in until it is drawn again.</span>
          )}
        </div>
      )}
    </li>
  );
}

/** What a thing that cannot be read is called, if that can. */
const ownName = (raw: unknown): string =>
  typeof raw === 'object' && raw !== null && 'name' in raw && typeof raw.name === 'string' ? raw.name : '';

/** The figure that was meant. */
function Figure({ problem, mender, mend, field }: { problem: NeedsRepair; mender: Mender; mend: EntryMend; field: string }) {
  const session = useSession();
  const units = useUnits();
  function write(figure: number | null) {
    if (figure === null) return;
    if (!mender.takes(problem, figure)) session.announce(`This does not fit either: expected is ${problem.expected}.`);
    else if (session.commands.setBack(mend.thing, { [field]: { value: figure } }))
      session.announce('Mended. Take back brings it again as it was.');
    else session.announce('It is gone meanwhile.');
  }
  const label = `Mend it: ${wordOfField(field)}`;
  if (isLengthField(field))
    return <LengthField label={label} value={null} units={units} mayBeEmpty placeholder="not known" onCommit={write} />;
  return <NumberField label={label} value={null} mayBeEmpty isWhole={false} least={-1_000_000} most={1_000_000} onCommit={write} />;
}

/** The copy first: then it can be taken out without being lost. */
function takeOut(session: ReturnType<typeof useSession>, problem: NeedsRepair, { entry }: EntryMend, name: string): void {
  if (!entry) return;
  const copy = { ...problem, entry: rawOf(session.document.doc, problem.path) };
  saveText(`${JSON.stringify(copy, null, 2)}\n`, fileNameOf(`${session.classroom().name} ${entry.key} taken out`).replace('.lowshelf', ''));
  const isDone = session.commands.takeOut(entry.path, entry.key);
  session.announce(isDone ? `${name} is taken out; a copy is saved as a file. Take back brings it again.` : 'It is gone meanwhile.');
}

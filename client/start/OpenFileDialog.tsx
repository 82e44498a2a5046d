import { useState } from 'react';
import { type TornClassroom, withTornEntries } from '#model/document/tornEntries.ts';
import { limits } from '#model/schema/limits.ts';
import { type FileProblem, readClassroomFile } from '#model/schema/readFile.ts';
import { openAsNew } from '../session/starts.ts';
import { sayCount } from '../text/sayCount.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { sayEntries } from './sayEntries.ts';
import { sayFileProblem, UNREAD } from './sayFileProblem.ts';

/** How many problems of a file are listed. */
const SHOWN = 20;

/** Opens a classroom file under an address of its own; a file that cannot be read says where and why, and changes nothing. */
export function OpenFileDialog({ onClose }: { onClose: () => void }) {
  const [name, setName] = useState('');
  const [problems, setProblems] = useState<readonly FileProblem[]>([]);
  const [torn, setTorn] = useState<TornClassroom | null>(null);

  async function read(file: File) {
    setName(file.name);
    setTorn(null);
    if (file.size > limits.fileBytes) {
      setProblems([
        { path: '(file)', found: `${(file.size / 1048576).toFixed(1)} MB`, expected: `at most ${limits.fileBytes / 1048576} MB` },
      ]);
      return;
    }
    const result = readClassroomFile(await file.text());
    if (!result.ok) {
      setTorn(result.torn ? withTornEntries(result.torn) : null);
      setProblems(result.problems);
      return;
    }
    onClose();
    openAsNew(result.classroom);
  }

  function choose(file: File | undefined) {
    if (!file) return;
    read(file).catch((error: unknown) =>
      setProblems([
        {
          path: '(file)',
          found: UNREAD,
          expected: error instanceof Error ? error.message : String(error),
        },
      ]),
    );
  }

  return (
    <Dialog title="Open a file" isOpen onClose={onClose}>
      <p>The file becomes a classroom of its own, with a new address. What is open now stays as it is.</p>
      <Field label="Classroom file">
        {(wiring) => (
          <input {...wiring} type="file" accept=".json,application/json" onChange={(event) => choose(event.target.files?.[0])} />
        )}
      </Field>
      {problems.length > 0 && (
        <div role="alert" className="form-part">
          <h3>
            {torn
              ? `${sayCount(torn.entries.length, 'thing', 'things')} in ${name} cannot be read.`
              : `${name} could not be read. Nothing was changed.`}
          </h3>
          {torn && (
            <>
              <p>
                It is {sayEntries(torn.entries)}. The rest is whole. Opened all the same, what cannot be read is kept and named at the top
                of the sheet, and can be mended there; until then it is not drawn and not checked.
              </p>
              <Button
                kind="strong"
                onPress={() => {
                  onClose();
                  openAsNew(torn.classroom);
                }}
              >
                Open it all the same
              </Button>
            </>
          )}
          <ul className="problems">
            {problems.slice(0, SHOWN).map((problem) => (
              <Problem key={`${problem.path} ${problem.expected}`} problem={problem} />
            ))}
          </ul>
          {problems.length > SHOWN && <p className="aside">and {sayCount(problems.length - SHOWN, 'more', 'more')}</p>}
        </div>
      )}
      <TextLink onPress={onClose}>Close</TextLink>
    </Dialog>
  );
}

/** In a guide's words, the technical ones behind them; a fault inside a classroom file says its place at once. */
function Problem({ problem }: { problem: FileProblem }) {
  const words = sayFileProblem(problem);
  if (words === null)
    return (
      <li>
        At <code>{problem.path}</code>: found {problem.found}, expected {problem.expected}.
      </li>
    );
  return (
    <li>
      {words.text}
      <details>
        <summary>In technical words</summary>
        {words.technical}
      </details>
    </li>
  );
}

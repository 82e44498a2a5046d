import { useState } from 'react';
import { boardName } from '../front/boardNames.ts';
import { type PaperName, paperNames, sayPaper } from '../print/paper.ts';
import { keepPaper, readPaper } from '../print/printChoice.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { CrateBadges, sayInside } from './CrateTable.tsx';
import type { Day } from './dayOf.ts';
import { sayBoardsOf } from './sayStep.ts';
import '../styles/printOut.css';
import '../styles/crateLabels.css';
import { capital } from '../text/sayList.ts';

/** A label for each crate, two in a row, on the paper that this device prints on. */
export function CrateLabels({ day, onClose }: { readonly day: Day; readonly onClose: () => void }) {
  const [paper, setPaper] = useState(() => readPaper(day.plan.from.classroom.display.units));
  return (
    <Dialog title="Crate labels" isOpen onClose={onClose} isWide isPrinted>
      <p className="aside">Two in a row. Cut them apart and tape one on the short side of each crate.</p>
      <Choice
        label="Paper"
        value={paper}
        options={paperNames.map((name) => ({ value: name, text: sayPaper(name) }))}
        onChange={(name) => {
          setPaper(name);
          keepPaper(name);
        }}
      />
      <div className="verbs">
        <Button kind="strong" onPress={() => print()}>
          Print
        </Button>
        <TextLink onPress={onClose}>Back to the sheet</TextLink>
      </div>
      <Labels day={day} paper={paper} />
    </Dialog>
  );
}

function Labels({ day, paper }: { readonly day: Day; readonly paper: PaperName }) {
  const { plan, names } = day;
  return (
    <ul className={`crate-labels print-out ${paper}`}>
      {plan.packed.crates.map(({ letter, materials, to }) => (
        <li key={letter} className="crate-label">
          <b className="crate-letter">{letter}</b>
          <div>
            <p className="crate-back">{to ? capital(names.name(to.piece)) : 'The table'}</p>
            <p>{to ? sayBoardsOf(plan, materials, boardName) : ''}</p>
            <p>
              <CrateBadges day={day} materials={materials} /> {sayInside(day, materials)}
            </p>
            <p className="aside">{materials.map((id) => plan.from.materialById.get(id)?.name ?? id).join(' · ')}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

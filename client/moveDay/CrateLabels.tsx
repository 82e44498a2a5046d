import { boardName } from '../front/boardNames.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { sayInside } from './CrateTable.tsx';
import type { Day } from './dayOf.ts';
import { capital } from './names.ts';
import { sayBoardsOf } from './sayStep.ts';
import '../styles/printOut.css';
import '../styles/crateLabels.css';

/** A label for each crate, two in a row on A4. */
export function CrateLabels({ day, onClose }: { readonly day: Day; readonly onClose: () => void }) {
  return (
    <Dialog title="Crate labels" isOpen onClose={onClose} isWide>
      <p className="aside">Two in a row on A4. Cut them apart and tape one on the short side of each crate.</p>
      <div className="verbs">
        <Button kind="strong" onPress={() => print()}>
          Print
        </Button>
        <TextLink onPress={onClose}>Back to the sheet</TextLink>
      </div>
      <Labels day={day} />
    </Dialog>
  );
}

function Labels({ day }: { readonly day: Day }) {
  const { plan, names } = day;
  return (
    <ul className="crate-labels print-out">
      {plan.packed.crates.map(({ letter, area, strand, materials, to }) => (
        <li key={letter} className="crate-label">
          <b className="crate-letter">{letter}</b>
          <div>
            <p className="crate-back">{to ? capital(names.name(to.piece)) : 'The table'}</p>
            <p>{to ? sayBoardsOf(plan, materials, boardName) : ''}</p>
            <p>
              <AreaBadge area={area} strand={strand} /> {sayInside(day, materials)}
            </p>
            <p className="aside">{materials.map((id) => plan.from.materialById.get(id)?.name ?? id).join(' · ')}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

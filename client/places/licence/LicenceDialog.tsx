import { useState } from 'react';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { useArrangement, useClassroom, useReportOf } from '../../session/hooks.ts';
import { isoToday } from '../../text/sayDay.ts';
import { Button } from '../../ui/Button.tsx';
import { Choice } from '../../ui/Choice.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { areMatsProven, type PlacesLine } from '../placesLine.ts';
import { LicencePaper, type PaperSize } from './LicencePaper.tsx';
import { licenceOf } from './licenceOf.ts';
import '../../styles/printOut.css';
import '../../styles/licence.css';

interface Props {
  readonly inForce: FloorPlaces;
  readonly line: PlacesLine;
  /** Checks are still looking: figures may change. */
  readonly isThinking: boolean;
  readonly onClose: () => void;
}

/** The licence sheet as it will be printed. */
export function LicenceDialog({ inForce, line, isThinking, onClose }: Props) {
  const classroom = useClassroom();
  const arrangement = useArrangement();
  const isProven = useReportOf(areMatsProven);
  const [size, setSize] = useState<PaperSize>(classroom.display.units === 'imperial' ? 'letter' : 'a4');
  return (
    <Dialog title="Licence sheet" isOpen onClose={onClose} isWide isPrinted>
      <div className="licence-tools">
        <Choice
          label="Paper"
          value={size}
          options={[
            { value: 'a4', text: 'A4' },
            { value: 'letter', text: 'US Letter' },
          ]}
          onChange={setSize}
        />
        <div className="verbs">
          <Button kind="strong" onPress={() => print()}>
            Print
          </Button>
          <TextLink onPress={onClose}>Back to the sheet</TextLink>
        </div>
        {isThinking && <p className="aside">Still looking … the figures may change.</p>}
      </div>
      <LicencePaper
        classroom={classroom}
        arrangement={arrangement.name}
        licence={licenceOf(classroom, inForce, line, isProven)}
        year={line.year}
        size={size}
        today={isoToday()}
      />
    </Dialog>
  );
}

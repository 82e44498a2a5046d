import { useEffect, useState } from 'react';
import { useAnnouncement, useCheckTrouble, useKept, useNeedsRepair } from '../session/hooks.ts';
import { sayCount } from '../text/sayCount.ts';
import { sayKept } from '../text/sayKept.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** How long a said thing stays in sight (ms). */
const STAYS = 8000;

/** What was just done, said politely; and troubles, which stay until they are over. */
export function StatusLine() {
  const announcement = useAnnouncement();
  const checkTrouble = useCheckTrouble();
  const kept = sayKept(useKept());
  const repair = useNeedsRepair();
  const [gone, setGone] = useState(0);
  const [isRepairOpen, setRepairOpen] = useState(false);

  useEffect(() => {
    const timer = setTimeout(() => setGone(announcement.sequence), STAYS);
    return () => clearTimeout(timer);
  }, [announcement.sequence]);

  const said = announcement.sequence > gone ? announcement.text : '';
  return (
    <>
      {/* A no-break space now and then makes a screen reader say the same words again. */}
      <p className={said ? 'said' : 'said empty'} role="status">
        {said}
        {said && announcement.sequence % 2 === 1 ? '\u00a0' : ''}
      </p>
      {checkTrouble && (
        <p className="status-line trouble" role="alert">
          {checkTrouble}
        </p>
      )}
      {kept.isTrouble && (
        <p className="status-line trouble" role="alert">
          Careful: {kept.text}. Save a file to be safe.
        </p>
      )}
      {repair.length > 0 && (
        <div className="status-line trouble">
          <p>{sayCount(repair.length, 'entry', 'entries')} of this classroom cannot be read. They are kept, but not drawn.</p>
          <TextLink onPress={() => setRepairOpen(!isRepairOpen)}>{isRepairOpen ? 'Hide them' : 'Which?'}</TextLink>
          {isRepairOpen && (
            <ul className="repairs">
              {repair.map((entry) => (
                <li key={entry.path}>
                  {entry.path}: found {entry.found}, expected {entry.expected}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </>
  );
}

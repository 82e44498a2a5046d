import { useEffect, useRef, useState } from 'react';
import type { Conflict } from '../session/conflicts.ts';
import { useClassroom, useMayChange, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { sayConflict, sayWho } from './sayConflict.ts';
import { canKeepBoth, keepBoth, keepMine, keepTheirs } from './settleConflict.ts';
import '../styles/states.css';

/** So many are shown at once; the others come when these are settled, or all at once. */
const AT_FIRST = 3;

/** What was changed here and elsewhere by people who had not met: both versions, and what to keep. */
export function ConflictNotice({ conflicts }: { readonly conflicts: readonly Conflict[] }) {
  const session = useSession();
  const mayChange = useMayChange();
  useClassroom();
  const [isWhole, setWhole] = useState(false);
  const count = conflicts.length;
  const told = useRef(0);
  useEffect(() => {
    // Fewer are the person's own doing; who may only look decides nothing.
    const isMore = count > told.current;
    told.current = count;
    if (isMore && mayChange)
      session.announce(
        `${count === 1 ? 'One of your changes was' : `${count} of your changes were`} overwritten. Above the sheet: which to keep.`,
      );
  }, [count, mayChange, session]);
  const shown = isWhole ? conflicts : conflicts.slice(0, AT_FIRST);
  const names = new Set(conflicts.map(sayWho));
  const [only] = names;
  const theirs = names.size === 1 && only !== undefined && only !== 'somebody else' ? `${only}’s` : 'theirs';
  if (!mayChange) return null;
  return (
    <section className="conflicts" aria-label="Changed by two people at once">
      <ul>
        {shown.map((conflict) => (
          <One key={conflict.key} conflict={conflict} />
        ))}
      </ul>
      {count > 1 && (
        <div className="verbs">
          {count > shown.length && <TextLink onPress={() => setWhole(true)}>{count - shown.length} more</TextLink>}
          <TextLink onPress={() => keepMine(session, conflicts)}>Keep all of mine</TextLink>
          <TextLink onPress={() => keepTheirs(session, conflicts)}>Keep all of {theirs}</TextLink>
        </div>
      )}
    </section>
  );
}

function One({ conflict }: { readonly conflict: Conflict }) {
  const session = useSession();
  const { title, mine, theirs } = sayConflict(session, conflict);
  const who = sayWho(conflict);
  const isNamed = who !== 'somebody else';
  const about = <span className="only-heard">: {title}</span>;
  return (
    <li className="conflict">
      <p>
        <b>{title}.</b>
      </p>
      <p>
        <span className="version mine">Mine: {mine}</span>{' '}
        <span className="version theirs">
          {isNamed ? `${who}’s` : 'Theirs'}: {theirs}
        </span>
      </p>
      <div className="verbs">
        <Button onPress={() => keepMine(session, [conflict])}>Keep mine{about}</Button>
        <Button onPress={() => keepTheirs(session, [conflict])}>
          Keep {isNamed ? `${who}’s` : 'theirs'}
          {about}
        </Button>
        {canKeepBoth(conflict) && <Button onPress={() => keepBoth(session, conflict)}>Keep both{about}</Button>}
      </div>
    </li>
  );
}

import { useMemo } from 'react';
import { choose } from '../plan/verbs.ts';
import { useArrangement, useClassroom, useSession, useViewOf } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { toggleLaid } from './laidOf.ts';
import { sayDifferences } from './sayDifferences.ts';
import '../styles/laidOver.css';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';

/** What differs from the arrangement that lies dashed under the shown one. */
export function LaidOver() {
  const session = useSession();
  const classroom = useClassroom();
  const shown = useArrangement();
  const laid = useViewOf('laid');
  const under = classroom.arrangements.find(({ id }) => id === laid) ?? null;
  const differences = useMemo(() => (under ? sayDifferences(classroom, under, shown) : []), [classroom, under, shown]);
  if (!under) return null;
  const others = classroom.arrangements.filter(({ id }) => id !== shown.id && id !== under.id);
  return (
    <section className="laid-over" aria-labelledby="laid-over-head">
      <header>
        <h3 id="laid-over-head">
          “{nameOfArrangement(shown)}” over “{nameOfArrangement(under)}” (dashed)
        </h3>
        <TextLink onPress={() => void toggleLaid(session)}>Take it off</TextLink>
      </header>
      {differences.length === 0 ? (
        <p>They do not differ.</p>
      ) : (
        <ul>
          {differences.map(({ id, piece, text }) => (
            <li key={id}>
              {piece === null ? (
                text
              ) : (
                <TextLink ink onPress={() => choose(session, { kind: 'piece', id: piece })}>
                  {text}
                </TextLink>
              )}
            </li>
          ))}
        </ul>
      )}
      {others.length > 0 && (
        <p className="aside">
          Or over{' '}
          {others.map((other) => (
            <TextLink key={other.id} onPress={() => session.setView({ laid: other.id })}>
              {nameOfArrangement(other)}
            </TextLink>
          ))}
        </p>
      )}
    </section>
  );
}

import { Suspense, useState } from 'react';
import { toggleLaid } from '../laidOver/laidOf.ts';
import { useArrangement, useClassroom, useMayChange, useSession, useViewOf } from '../session/hooks.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';

const NameDialog = late(() => import('./NameDialog.tsx').then((m) => m.NameDialog));

/** How it stands in ink, what is proposed in pencil, dashed. */
export function ArrangementSwitch() {
  const session = useSession();
  const classroom = useClassroom();
  const shown = useArrangement();
  const laid = useViewOf('laid');
  const sheet = useViewOf('sheet');
  const mayChange = useMayChange();
  const [asking, setAsking] = useState<'copy' | 'rename' | null>(null);
  const standing = classroom.current ?? classroom.arrangements[0]?.id;

  function show(id: string, name: string) {
    session.setView({ arrangement: id, chosen: null, finding: null, preview: null });
    session.announce(`${name} is shown.`);
  }

  function name(text: string) {
    if (asking === 'copy') {
      const id = session.commands.addArrangement(text, shown.id);
      show(id, text);
    } else session.commands.renameArrangement(shown.id, text);
    setAsking(null);
  }

  const hasOther = classroom.arrangements.length > 1;
  const layVerb = laid === null ? 'Lay one over the other' : 'Lay one over the other: take it off';
  function lay() {
    if (session.view().sheet !== 'room') session.setView({ sheet: 'room' });
    void toggleLaid(session);
  }

  const verbs = [
    { id: 'copy', text: 'Propose another, starting from this one', run: () => setAsking('copy') },
    { id: 'lay', text: layVerb, isOff: !hasOther, run: lay },
    { id: 'rename', text: 'Give it another name', run: () => setAsking('rename') },
    {
      id: 'stands',
      text: 'The room stands like this now',
      isOff: shown.id === standing,
      run: () => {
        session.commands.setCurrent(shown.id);
        session.announce(`The room stands as "${nameOfArrangement(shown)}" now.`);
      },
    },
    {
      id: 'remove',
      text: 'Put this proposal away',
      isOff: shown.id === standing || classroom.arrangements.length < 2,
      run: () => {
        session.commands.removeArrangement(shown.id);
        session.announce(`"${nameOfArrangement(shown)}" is put away. Take back brings it again while this page stays open.`);
      },
    },
  ];

  return (
    <div className="arrangements">
      <VerbMenu label="Arrangement" items={mayChange ? verbs : verbs.filter(({ id }) => id === 'lay')} />
      <fieldset className="arrangement-switch" aria-label="Arrangement shown">
        {classroom.arrangements.map((arrangement) => (
          <button
            key={arrangement.id}
            type="button"
            aria-pressed={arrangement.id === shown.id}
            className={arrangement.id === standing ? undefined : 'proposed'}
            onClick={() => show(arrangement.id, nameOfArrangement(arrangement))}
          >
            {nameOfArrangement(arrangement)}
          </button>
        ))}
      </fieldset>
      {hasOther && sheet === 'room' && (
        <span className="lay-over">
          <TextLink ink aria-pressed={laid !== null} onPress={lay}>
            Lay one over the other
          </TextLink>
        </span>
      )}
      {asking && (
        <Suspense fallback={null}>
          <NameDialog
            title={asking === 'copy' ? 'Propose another arrangement' : 'Name of this arrangement'}
            value={asking === 'copy' ? '' : shown.name}
            verb={asking === 'copy' ? 'Propose it' : 'Name it so'}
            onName={name}
            onClose={() => setAsking(null)}
          />
        </Suspense>
      )}
    </div>
  );
}

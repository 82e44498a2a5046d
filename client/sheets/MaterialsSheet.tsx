import { Suspense, useCallback, useDeferredValue, useMemo, useState } from 'react';
import { SheetLayout } from '../frame/SheetLayout.tsx';
import { useLayout } from '../frame/useLayout.ts';
import { orderMoves } from '../front/orderMoves.ts';
import { putInStep } from '../front/putInStep.ts';
import { placeBest } from '../front/putOption.ts';
import { checksBySubject } from '../lists/trayChecks.ts';
import { useMayChange, useReport, useScene, useSession, useUnits, useViewOf } from '../session/hooks.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { AddOwn } from './materials/AddOwn.tsx';
import { MaterialPanel } from './materials/MaterialPanel.tsx';
import { MaterialTable } from './materials/MaterialTable.tsx';
import { type RowOrder, type RowVerb, rowSections } from './materials/materialRows.ts';
import { sayCounts } from './materials/sayCounts.ts';
import { TableHead } from './materials/TableHead.tsx';
import { Threads } from './materials/Threads.tsx';
import { useFits } from './materials/useFits.ts';

import '../styles/materials.css';
import '../styles/materialPanel.css';
import '../styles/threads.css';
import { late } from '../ui/late.tsx';

const AddFromCatalogue = late(() => import('./materials/AddFromCatalogue.tsx').then((module) => module.AddFromCatalogue));

/** The materials: threads of steps, all of them in a table, and where the chosen one would fit. */
export function MaterialsSheet() {
  const session = useSession();
  const scene = useScene();
  const chosen = useViewOf('material');
  const report = useReport();
  const units = useUnits();
  const layout = useLayout();
  const moves = orderMoves(report, scene);
  const checks = checksBySubject(report);
  const [area, setArea] = useState<string | null>(null);
  const [typed, setTyped] = useState('');
  const [order, setOrder] = useState<RowOrder>('step');
  // A tablet and a phone have room for the table or for all threads: what is looked for comes first.
  const [isFolded, setFolded] = useState(layout === 'tablet' || layout === 'phone');
  const [adding, setAdding] = useState<'catalogue' | 'own' | null>(null);
  const filter = useDeferredValue(useMemo(() => ({ area, typed, order }), [area, typed, order]));
  const fits = useFits(scene);
  const mayChange = useMayChange();
  const sections = useMemo(() => {
    const all = rowSections({ scene, moves, checks, fits }, filter);
    return mayChange ? all : all.map((section) => ({ ...section, rows: section.rows.map((row) => ({ ...row, verb: null })) }));
  }, [scene, moves, checks, fits, filter, mayChange]);

  const choose = useCallback((id: string) => session.setView({ material: id, chosen: { kind: 'tray', id } }), [session]);
  const doVerb = useCallback(
    (id: string, verb: NonNullable<RowVerb>) => {
      session.setView({ material: id });
      if (verb === 'put in step') putInStep(session, id);
      else placeBest(session, id);
    },
    [session],
  );

  const main = (
    <div className="materials-main">
      <div className="panel-head">
        <h2>Threads</h2>
        <span className="aside threads-what">
          <span className="threads-how">each area as one line of steps, in the order they stand on the shelves · </span>
          {sayCounts(scene)}
        </span>
        {layout !== 'wide' && scene.classroom.materials.length > 0 && (
          <TextLink aria-expanded={!isFolded} onPress={() => setFolded(!isFolded)}>
            {isFolded ? 'Show all threads' : 'Fold them'}
          </TextLink>
        )}
      </div>
      {scene.classroom.materials.length === 0 ? (
        <p className="materials-empty">No materials yet. Add those of the trade from the catalogue, or your own.</p>
      ) : (
        <Threads {...{ scene, moves, area, chosen, isFolded }} onArea={setArea} onChoose={choose} />
      )}
      <TableHead {...{ scene, area, typed, order }} onTyped={setTyped} onOrder={setOrder} onArea={setArea} onAdd={setAdding} />
      <MaterialTable {...{ sections, chosen, units }} hasBoard={layout === 'wide'} onChoose={choose} onVerb={doVerb} />
      {sections.length === 0 && scene.classroom.materials.length > 0 && <p className="materials-empty">Nothing is called that here.</p>}
    </div>
  );

  return (
    <>
      <SheetLayout main={main} right={<MaterialPanel scene={scene} id={chosen} />} mainName="Threads" rightName="Where would it fit?" />
      <Dialog title="Add from the catalogue" isOpen={adding === 'catalogue'} onClose={() => setAdding(null)} isWide>
        <Suspense fallback={<p>The catalogue is being opened …</p>}>
          <AddFromCatalogue onDone={() => setAdding(null)} />
        </Suspense>
      </Dialog>
      <Dialog title="Add a material of your own" isOpen={adding === 'own'} onClose={() => setAdding(null)}>
        <AddOwn onDone={() => setAdding(null)} />
      </Dialog>
    </>
  );
}

import { Suspense } from 'react';
import { fetchWhenQuiet } from '../../session/whenQuiet.ts';
import { late } from '../../ui/late.tsx';
import type { Item } from '../items.ts';
import { loadSetDrags } from '../lateParts.ts';

const load = () => Promise.all([import('./SetStrip.tsx'), loadSetDrags()]).then(([strip]) => strip);
const Strip = late(() => load().then((m) => m.SetStrip));
const Verbs = late(() => load().then((m) => m.SetVerbs));
fetchWhenQuiet(load);

interface Props {
  readonly items: readonly Item[];
}

/** The verbs of several things: nobody has chosen several when the page opens. */
export const LateSetStrip = ({ items }: Props) => (
  <Suspense fallback={<p className="chosen-strip aside">{items.length} things</p>}>
    <Strip items={items} />
  </Suspense>
);

export const LateSetVerbs = ({ items }: Props) => (
  <Suspense fallback={null}>
    <Verbs items={items} />
  </Suspense>
);

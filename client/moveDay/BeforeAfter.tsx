import type { MoveFigures } from '#model/analysis/moveDay/figures.ts';
import { sayArea } from '#model/units/sayLength.ts';
import { useUnits } from '../session/hooks.ts';
import type { FiguresState } from './useFigures.ts';

interface Row {
  readonly name: string;
  readonly of: (figures: MoveFigures) => string | null;
}

const say = (value: number | null | undefined): string | null => (value === null || value === undefined ? null : String(value));

const rows: readonly Row[] = [
  { name: 'Too narrow on a way', of: ({ narrow }) => say(narrow) },
  { name: 'Mats that fit', of: ({ mats }) => say(mats?.count) },
  { name: 'Places to work', of: ({ work }) => say(work) },
  { name: 'Trays out of step', of: ({ outOfStep }) => say(outOfStep) },
  { name: 'Trays too high', of: ({ tooHigh }) => say(tooHigh) },
];

/** What the move does to the children, told in six figures. */
export function BeforeAfter({ figures, from, to }: { readonly figures: FiguresState; readonly from: string; readonly to: string }) {
  const units = useUnits();
  const before = figures.of.find(({ arrangement }) => arrangement === from);
  const after = figures.of.find(({ arrangement }) => arrangement === to);
  return (
    <section className="before-after" aria-labelledby="before-after-head">
      <header className="panel-head">
        <h2 id="before-after-head">Before and after</h2>
        <span className="aside">{sayHidden(before, after, (m2) => sayArea(m2, units))}</span>
      </header>
      <dl className="before-after-rows">
        {rows.map(({ name, of }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <span>{sayFigure(before, of)}</span> <span aria-hidden="true">→</span> <span className="only-heard">then</span>{' '}
              <b>{sayFigure(after, of)}</b>
            </dd>
          </div>
        ))}
      </dl>
      {figures.trouble && <p role="alert">{figures.trouble}</p>}
      {!figures.trouble && !after && <p className="aside">Being worked out …</p>}
    </section>
  );
}

/** "…": being worked out; "?": cannot be told. */
const sayFigure = (figures: MoveFigures | undefined, of: Row['of']): string => (figures ? (of(figures) ?? '?') : '…');

function sayHidden(before: MoveFigures | undefined, after: MoveFigures | undefined, area: (m2: number) => string): string {
  if (!before || !after || before.hidden === null || after.hidden === null) return '';
  const [was, is] = [area(before.hidden), area(after.hidden)];
  if (was === is) return `the hidden floor stays: ${is}`;
  return `hidden floor: ${was} before, ${is} after`;
}

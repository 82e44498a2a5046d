import { ShortState, ShortTitle } from './ShortTitle.tsx';

/** The title block as a strip along the foot of a sheet, where a block would take half of a column. */
export function FootStrip() {
  return (
    <div className="foot-strip">
      <ShortTitle />
      <ShortState />
    </div>
  );
}

import { TRAY_KG } from '#model/analysis/moveDay/practice.ts';
import { areaLetters } from '#model/catalogue/areas.ts';
import { stepOf } from '#model/measures/steps.ts';
import type { Material } from '#model/schema/types.ts';
import { boardName } from '../front/boardNames.ts';
import { capital } from '../text/sayList.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import type { Day } from './dayOf.ts';
import { sayBoardsOf } from './sayStep.ts';

/** Which crate holds what, and where it is emptied. */
export function CrateTable({ day }: { readonly day: Day }) {
  const { plan, names } = day;
  const { crates, byHand } = plan.packed;
  const guessed = crates.flatMap(({ letter, unknown }) => (unknown > 0 ? [`${unknown} in crate ${letter}`] : []));
  if (crates.length === 0 && byHand.length === 0) return <p className="aside">No shelf has to be emptied: no crate is needed.</p>;
  return (
    <>
      <table className="list-table crate-table">
        <thead>
          <tr>
            <th scope="col">Crate</th>
            <th scope="col">Area</th>
            <th scope="col">Steps inside</th>
            <th scope="col">Back to</th>
            <th scope="col" className="figure">
              kg
            </th>
          </tr>
        </thead>
        <tbody>
          {crates.map((crate) => (
            <tr key={crate.letter}>
              <th scope="row">
                <CrateMark letter={crate.letter} />
              </th>
              <td>
                <CrateBadges day={day} materials={crate.materials} />
              </td>
              <td>{sayInside(day, crate.materials)}</td>
              <td>{crate.to ? `${capital(names.name(crate.to.piece))}, ${sayBoardsOf(plan, crate.materials, boardName)}` : 'the table'}</td>
              <td className="figure">
                {crate.unknown > 0 && 'about '}
                {crate.kg.toFixed(1)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {guessed.length > 0 && (
        <p className="aside">
          About: a tray of unknown mass counts as {TRAY_KG} kg ({guessed.join(', ')}). Type its mass on the Materials sheet.
        </p>
      )}
      {byHand.length > 0 && (
        <p className="aside">
          Too large for a crate, carried by hand: {byHand.map((id) => plan.from.materialById.get(id)?.name ?? id).join(', ')}.
        </p>
      )}
    </>
  );
}

/** One for each area that is in it. */
export function CrateBadges({ day, materials }: { readonly day: Day; readonly materials: readonly string[] }) {
  return (
    <span className="crate-badges">
      {areasInside(day, materials).map(({ area, strand }) => (
        <AreaBadge key={areaLetters(area, strand)} area={area} strand={strand} />
      ))}
    </span>
  );
}

/** Areas in the order in which the trays go back, those of one badge once: art is a strand with a badge of its own. */
export function areasInside({ plan }: Pick<Day, 'plan'>, materials: readonly string[]): readonly Pick<Material, 'area' | 'strand'>[] {
  const found = new Map<string, Pick<Material, 'area' | 'strand'>>();
  for (const id of materials) {
    const material = plan.from.materialById.get(id);
    if (!material || material.area === '') continue;
    const letters = areaLetters(material.area, material.strand);
    if (!found.has(letters)) found.set(letters, material);
  }
  return [...found.values()];
}

function CrateMark({ letter }: { readonly letter: string }) {
  return (
    <svg className="crate-mark" width="40" height="30" viewBox="0 0 40 30" role="img" aria-label={`Crate ${letter}`}>
      <path d="M14 5.5a6 4.5 0 0 1 12 0" fill="none" stroke="var(--ink)" strokeWidth="1.2" />
      <path d="M1.5 5.5H38.5L35 29H5Z" fill="var(--leaf)" stroke="var(--ink)" strokeWidth="1.2" />
      <text x="20" y="22" textAnchor="middle" fontSize="15" fontWeight="650" fontFamily="var(--font-title)" fill="var(--ink)">
        {letter}
      </text>
    </svg>
  );
}

/** "numbers 1 to 5, 7; tens 3"; what has no step by its name. Steps are numbered within their strand, as on the Materials sheet. */
export function sayInside({ plan }: Pick<Day, 'plan'>, materials: readonly string[]): string {
  const byStrand = new Map<string, number[]>();
  const others: string[] = [];
  for (const id of materials) {
    const step = stepOf(plan.to, id);
    if (!step) continue;
    const strand = step.material.strand.trim();
    if (strand === '' || step.number === null) others.push(step.material.name);
    else byStrand.set(strand, [...(byStrand.get(strand) ?? []), step.number]);
  }
  const said = [...byStrand].map(([strand, numbers]) => `${strand} ${sayRuns(numbers)}`);
  return [...said, ...others].join('; ');
}

function sayRuns(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((p, q) => p - q);
  const runs: [number, number][] = [];
  for (const n of sorted) {
    const last = runs.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`)).join(', ');
}

import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react';
import type { Classroom } from '#model/schema/types.ts';
import { sourceText } from '#model/standards/sources.ts';
import { type LengthUnits, sayArea } from '#model/units/sayLength.ts';
import { sayYears } from '../../text/sayAges.ts';
import { sayCount } from '../../text/sayCount.ts';
import { sayDay } from '../../text/sayDay.ts';
import { inPlace } from '../../ui/inPlace.ts';
import type { PlacesLine } from '../placesLine.ts';
import { leastByRule } from '../statement.ts';
import type { Licence } from './licenceOf.ts';
import { sayItems, sayLicence, short } from './sayLicence.ts';

export type PaperSize = 'a4' | 'letter';
/** px of paper between margins of 12 mm, at 96 to the inch */
const paperHigh: Readonly<Record<PaperSize, number>> = { a4: (273 / 25.4) * 96, letter: (255.4 / 25.4) * 96 };
/** px kept free at the foot */
const SPARE = 8;

interface Props {
  readonly classroom: Classroom;
  readonly arrangement: string;
  readonly licence: Licence;
  readonly year: PlacesLine['year'];
  readonly size: PaperSize;
  /** ISO day */
  readonly today: string;
}

/** The sheet for the licensing visit: one page, whatever the class. */
export function LicencePaper({ classroom, arrangement, licence, year, size, today }: Props) {
  const paper = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => fitOnPage(paper, size));
  const units = classroom.display.units;
  const area = (m2: number | null): string => (m2 === null ? 'not known' : sayArea(m2, units));
  return (
    <div ref={paper} className={`licence-paper print-out ${size}`}>
      <header>
        <h3>{short(classroom.name, 60) || 'Class without a name'}</h3>
        <p>
          Licence sheet: how many children the room takes · {short(arrangement, 40)} · {sayDay(today)}
        </p>
        <p>
          Rule set: <b>{licence.ruleSet}</b>
          {licence.isGuideline && ' (a guideline, no law)'}
        </p>
      </header>
      <p className="licence-answer">{sayLicence(licence).join(' ')}</p>
      <FloorPart licence={licence} units={units} />
      <ChildrenPart licence={licence} area={area} />
      <div className="licence-pair">
        <LimitsPart licence={licence} area={area} />
        <PeoplePart classroom={classroom} licence={licence} year={year} today={today} />
      </div>
      <section>
        <h4>Open questions</h4>
        {licence.open.length === 0 ? <p>None.</p> : <p>{licence.open.map((question, i) => `(${i + 1}) ${question}`).join(' ')}</p>}
      </section>
      <section>
        <h4>Texts and editions</h4>
        <ul>
          {licence.sources.map((source) => (
            <li key={source}>{sourceText(source)}</li>
          ))}
        </ul>
      </section>
      <p className="licence-advice">
        Not legal advice: your licensing authority decides. Reckoned from the drawing as it stands; measure before you sign.
      </p>
      <div className="licence-signed">
        <span>Name</span>
        <span>Signature</span>
        <span>Date</span>
      </div>
    </div>
  );
}

function Row({ text, aside = '', children, isStrong = false }: { text: string; aside?: string; children: ReactNode; isStrong?: boolean }) {
  return (
    <tr className={isStrong ? 'strong' : undefined}>
      <th scope="row">
        {text}
        {aside !== '' && <span className="licence-aside"> · {aside}</span>}
      </th>
      <td className="figure">{children}</td>
    </tr>
  );
}

/** Rooms elsewhere that have a line of their own */
const MOST_ROOMS = 4;
/** Letters of what one line of the floor names */
const MOST_ITEMS = 84;

function FloorPart({ licence, units }: { licence: Licence; units: LengthUnits }) {
  const { inside, floor, others, counted, countedMost } = licence;
  const area = (m2: number): string => sayArea(m2, units);
  const bare = (m2: number): string => area(m2).replace(/ .*$/, '');
  const shown = others.slice(0, MOST_ROOMS);
  const rest = others.slice(MOST_ROOMS);
  return (
    <section>
      <h4>Floor that counts</h4>
      <table>
        <tbody>
          <Row text="Inside the walls">{inside === null ? 'not known' : area(inside)}</Row>
          {floor.map(({ what, items, deducted, isOpen, why }) => (
            <Row key={what} text={what} aside={`${why}: ${sayItems(items, bare, MOST_ITEMS)}`}>
              {isOpen ? `− ${area(deducted)} or 0` : deducted > 0 ? `− ${area(deducted)}` : 'counts'}
            </Row>
          ))}
          {inPlace(shown).map(({ place, entry: { name, area: m2 } }) => (
            <Row key={place} text={`Another room: ${short(name, 40) || 'without a name'}`}>
              + {area(m2)}
            </Row>
          ))}
          {rest.length > 0 && <Row text={`${rest.length} more rooms`}>+ {area(rest.reduce((sum, room) => sum + room.area, 0))}</Row>}
          <Row text="Counted floor" isStrong>
            {counted === null ? 'not known' : area(counted)}
            {counted !== null && countedMost !== null && countedMost > counted && ` to ${area(countedMost)}`}
          </Row>
        </tbody>
      </table>
    </section>
  );
}

type Say = (m2: number | null) => string;
/** Groups of children that have a line of their own */
const MOST_GROUPS = 8;

function ChildrenPart({ licence, area }: { licence: Licence; area: Say }) {
  const { groups, need, enrolled } = licence;
  const rest = groups.slice(MOST_GROUPS);
  return (
    <section>
      <h4>Children enrolled, by age</h4>
      <table>
        <thead>
          <tr>
            <th scope="col">Group</th>
            <th scope="col" className="figure">
              children
            </th>
            <th scope="col" className="figure">
              floor each
            </th>
            <th scope="col" className="figure">
              floor in all
            </th>
            <th scope="col">children to an adult</th>
          </tr>
        </thead>
        <tbody>
          {inPlace(groups.slice(0, MOST_GROUPS)).map(
            ({ place, entry: { name, fromMonths, toMonths, count, each, need: own, isBeyond, ratio } }) => (
              <tr key={place}>
                <th scope="row">
                  {short(name, 30)} aged {sayYears(fromMonths)} to {sayYears(toMonths)}
                  {isBeyond && ' (beyond the table, nearest row)'}
                </th>
                <td className="figure">{count}</td>
                <td className="figure">{area(each)}</td>
                <td className="figure">{area(own)}</td>
                <td>{ratio || 'no figure in this rule set'}</td>
              </tr>
            ),
          )}
          {rest.length > 0 && (
            <tr>
              <th scope="row">{rest.length} more groups</th>
              <td className="figure">{rest.reduce((sum, group) => sum + group.count, 0)}</td>
              <td />
              <td className="figure">{area(rest.reduce((sum, group) => sum + (group.need ?? 0), 0))}</td>
              <td />
            </tr>
          )}
          <tr className="strong">
            <th scope="row">All</th>
            <td className="figure">{enrolled}</td>
            <td />
            <td className="figure">{area(need)}</td>
            <td />
          </tr>
        </tbody>
      </table>
    </section>
  );
}

function LimitsPart({ licence, area }: { licence: Licence; area: Say }) {
  const { spare, byArea, byAreaMost, byAreaPerRoom, byAdults, byGroup, byWork, areMatsProven } = licence;
  const least = leastByRule(licence);
  const figure = (value: number | null): string => (value === null ? 'not told' : String(value));
  const mark = (name: string): string => (least?.name === name ? 'binds' : '');
  return (
    <section>
      <h4>Limits</h4>
      <table>
        <tbody>
          <Row text={spare !== null && spare < 0 ? 'Floor lacking' : 'Floor left over'}>
            {area(spare === null ? null : Math.abs(spare))}
          </Row>
          <Row text="By floor" aside={mark('area')}>
            {figure(byArea)}
            {byArea !== null && byAreaMost !== null && byAreaMost > byArea && ` to ${byAreaMost}`}
          </Row>
          {byAreaPerRoom !== null && byAreaPerRoom !== byArea && <Row text="By floor, each room rounded down">{byAreaPerRoom}</Row>}
          <Row text="By adults" aside={mark('adults')}>
            {figure(byAdults)}
          </Row>
          {byGroup !== null && (
            <Row text="Largest group" aside={mark('group')}>
              {byGroup}
            </Row>
          )}
          <Row text="By the rule set" isStrong>
            {figure(least?.takes ?? null)}
          </Row>
          <Row text="Places to work, no licensing limit" aside={areMatsProven ? '' : 'found so far'}>
            {figure(byWork)}
          </Row>
        </tbody>
      </table>
    </section>
  );
}

const roleWords = { lead: 'lead', qualified: 'qualified', assistant: 'assistant' } as const;
/** Dates to come that have a line of their own */
const MOST_DATES = 3;

function PeoplePart({ classroom, licence, year, today }: Pick<Props, 'classroom' | 'licence' | 'year' | 'today'>) {
  const adults = classroom.adults.filter(({ count }) => count > 0);
  const later = year.filter(({ from }) => from > today);
  return (
    <section>
      <h4>Adults, fixtures, the year</h4>
      <table>
        <tbody>
          <Row text="Adults" aside={adults.map(({ role, count }) => `${count} ${roleWords[role]}`).join(', ')}>
            {adults.reduce((sum, { count }) => sum + count, 0) || 'none entered'}
          </Row>
          {licence.fixtures.map(({ what, there, per, least, most }) => (
            <Row
              key={what}
              text={what === 'toilets' ? 'Toilets' : 'Wash basins'}
              aside={`1 for ${per}: ${least === most ? most : `${least} or ${most}`} needed`}
            >
              {there === null ? 'not counted' : `${there} there`}
            </Row>
          ))}
          {licence.fixtures.length === 0 && <Row text="Toilets, wash basins">no figure in this rule set</Row>}
          {later.slice(0, MOST_DATES).map(({ from, children, byArea }) => (
            <Row key={from} text={`From ${sayDay(from)}`} aside={byArea === null ? '' : `the floor takes ${byArea} of that mix`}>
              {sayCount(children, 'child', 'children')}
            </Row>
          ))}
          {later.length > MOST_DATES && <Row text={`${later.length - MOST_DATES} more dates`}>see the class</Row>}
        </tbody>
      </table>
    </section>
  );
}

/** Letters shrink until everything stands on one page; on the screen they keep their size. */
function fitOnPage(paper: RefObject<HTMLDivElement | null>, size: PaperSize): void {
  const node = paper.current;
  if (!node) return;
  node.classList.add('measured');
  for (let fit = 1.15; ; fit -= 0.03) {
    node.style.setProperty('--fit', fit.toFixed(2));
    if (node.scrollHeight <= paperHigh[size] - SPARE || fit < 0.5) break;
  }
  node.classList.remove('measured');
}

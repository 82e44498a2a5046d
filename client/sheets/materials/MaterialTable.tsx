import { memo } from 'react';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { figure } from '../../text/figure.ts';
import { oneStop } from '../../ui/oneStop.ts';
import { SeverityMark } from '../../ui/SeverityMark.tsx';
import type { MaterialRow, RowSection, RowVerb } from './materialRows.ts';

interface Props {
  readonly sections: readonly RowSection[];
  readonly chosen: string | null;
  readonly units: LengthUnits;
  /** The height of the board as a column of its own, where there is room. */
  readonly hasBoard: boolean;
  readonly onChoose: (id: string) => void;
  readonly onVerb: (id: string, verb: NonNullable<RowVerb>) => void;
}

/** All materials in words: a plain table, so that searching in the page, reading aloud and printing work. */
export const MaterialTable = memo(function MaterialTable({ sections, chosen, units, hasBoard, onChoose, onVerb }: Props) {
  const unit = units === 'metric' ? ', m' : '';
  return (
    <table ref={oneStop} className="material-table">
      <thead>
        <tr>
          <th scope="col" className="figure c-step">
            Step
          </th>
          <th scope="col">Material</th>
          <th scope="col" className="c-stands">
            Stands
          </th>
          {hasBoard && (
            <th scope="col" className="figure c-board">
              Board{unit}
            </th>
          )}
          <th scope="col" className="figure c-wide">
            Wide{unit}
          </th>
          <th scope="col" className="c-check">
            Check
          </th>
          <th scope="col" className="c-verb">
            <span className="only-heard">What to do</span>
          </th>
        </tr>
      </thead>
      {sections.map((section) => (
        <tbody key={section.title}>
          <tr className="material-section">
            <th scope="colgroup" colSpan={hasBoard ? 7 : 6}>
              {section.title} <span className="material-count">{section.rows.length}</span>
            </th>
          </tr>
          {section.rows.map((row) => (
            <Row
              key={row.id}
              id={row.id}
              step={row.step}
              name={row.name}
              stands={row.stands}
              board={!hasBoard ? null : row.board === null ? '—' : figure(row.board, units)}
              width={row.width === null ? '—' : figure(row.width, units)}
              mark={row.mark}
              check={row.check}
              verb={row.verb}
              isChosen={chosen === row.id}
              onChoose={onChoose}
              onVerb={onVerb}
            />
          ))}
        </tbody>
      ))}
    </table>
  );
});

interface RowProps extends Omit<MaterialRow, 'board' | 'width'>, Pick<Props, 'onChoose' | 'onVerb'> {
  /** null: the column is not shown */
  readonly board: string | null;
  readonly width: string;
  readonly isChosen: boolean;
}

const verbWords: Readonly<Record<NonNullable<RowVerb>, string>> = {
  'place it': 'Place it',
  'make room': 'Make room',
  'put in step': 'Put in step',
};

/** Plain values only, so that a row is drawn again only when something in it changed. */
const Row = memo(function Row({ id, step, name, stands, board, width, mark, check, verb, isChosen, onChoose, onVerb }: RowProps) {
  return (
    <tr aria-current={isChosen || undefined} data-mark={mark ?? undefined}>
      <td className="figure step">{step === '' ? '–' : step}</td>
      <td>
        <button type="button" className="material-name" aria-pressed={isChosen} onClick={() => onChoose(id)}>
          {name}
        </button>
      </td>
      <td className="stands">{stands}</td>
      {board !== null && <td className="figure c-board">{board}</td>}
      <td className="figure c-wide">{width}</td>
      <td className="check" title={check}>
        {mark && <SeverityMark mark={mark} size={13} />} <span>{check}</span>
      </td>
      <td className="verb">
        {verb && (
          <button type="button" className="text-link" aria-label={`${verbWords[verb]}: ${name}`} onClick={() => onVerb(id, verb)}>
            {verbWords[verb]}
          </button>
        )}
      </td>
    </tr>
  );
});

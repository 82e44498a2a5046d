import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { setVerbs } from './set/chosenVerbs.ts';
import { asides, isForLookers, type Verb, verbs } from './tools.ts';

export interface KeyGroup {
  readonly title: string;
  readonly keys: readonly { readonly key: string; readonly does: string }[];
}

const letterOf = ({ letter = '', name }: Verb): { key: string; does: string } => ({ key: letter, does: name });

/** Every key there is, in words, by where it works. */
export function keyList(units: LengthUnits, mayChange: boolean): readonly KeyGroup[] {
  const by = (mm: number): string => sayLength(mm, units);
  const inHand = [...verbs, ...asides].filter(({ letter, tool }) => letter && (mayChange || isForLookers(tool.kind)));
  return [
    {
      title: 'On the drawing',
      keys: [
        { key: 'Tab, Shift Tab', does: 'The next thing, the one before' },
        {
          key: 'Arrows',
          does: mayChange ? `Slide what is chosen by ${by(50)}; with nothing chosen, move the paper` : 'Move the paper',
        },
        ...(mayChange ? [{ key: 'Shift or Alt with arrows', does: `By ${by(500)}, or by ${by(10)}` }] : []),
        { key: 'Enter', does: 'Open a shelf’s front; with a tool in hand, press there' },
        ...(mayChange ? [{ key: 'Delete', does: 'Put away; trays go to the table' }] : []),
        { key: 'Escape', does: 'Let go; after that Tab leaves the drawing' },
        ...(mayChange ? [{ key: 'Ctrl A', does: 'Choose all that stands' }] : []),
      ],
    },
    {
      title: 'With the tape or a remark in hand',
      keys: [
        { key: 'Arrows', does: `Move a cross by ${by(50)}, with Shift by ${by(500)}, with Alt by ${by(10)}` },
        { key: 'Tab, Shift Tab', does: 'From thing to thing' },
        { key: 'Enter', does: 'An end of the tape, or the remark, goes there' },
        { key: 'Escape', does: 'Leave off' },
      ],
    },
    {
      title: 'On a shelf’s front',
      keys: [
        { key: 'Tab, Shift Tab', does: 'The next tray as it is read, the one before' },
        ...(mayChange
          ? [
              { key: 'Left, right', does: `Slide the tray by ${by(10)}, with Shift by ${by(100)}` },
              { key: 'Up, down', does: 'To another board' },
              { key: 'Delete', does: 'Put it on the table' },
            ]
          : []),
        { key: 'Escape', does: 'Let it go; once more, back to the plan' },
      ],
    },
    {
      title: 'In a table or a list',
      keys: [
        { key: 'Tab, Shift Tab', does: 'Into it, where you were last; on to the next part' },
        { key: 'Up, down', does: 'From row to row; Page up and Page down by ten' },
        { key: 'Left, right', does: 'Along what can be pressed in a row' },
        { key: 'Home, End', does: 'The ends of the row, then of the list' },
      ],
    },
    ...(mayChange
      ? [
          {
            title: 'Anywhere on the page',
            keys: [
              { key: 'Ctrl Z', does: 'Take back your own last step' },
              { key: 'Ctrl Shift Z, Ctrl Y', does: 'Do again' },
            ],
          },
        ]
      : []),
    {
      title: 'Letter keys, on the drawing',
      keys: [
        ...inHand.map(letterOf),
        ...(mayChange ? [{ key: '[ and ]', does: 'Turn by 15°, with Alt by 1°' }] : []),
        ...(mayChange
          ? setVerbs.map(({ letter, name }) => ({ key: letter, does: name === 'In a row' ? 'In a row, touching' : name }))
          : []),
        { key: '+ and −', does: 'Larger, smaller' },
        { key: '0', does: 'The whole room' },
        { key: '?', does: 'This list' },
      ],
    },
  ];
}

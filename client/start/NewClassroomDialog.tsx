import { Suspense, useState } from 'react';
import type { Classroom } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { MOST_NAME, sayFull } from '../frame/nameLength.ts';
import { announcer } from '../session/announcer.ts';
import { openAsNew } from '../session/starts.ts';
import { type DraftGroup, GroupsForm } from '../settings/GroupsForm.tsx';
import { type ExitRuleChoice, exitRuleOptions, ruleSetOptions } from '../text/ruleSets.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { late } from '../ui/late.tsx';
import { Select } from '../ui/Select.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { newClassroom } from './newClassroom.ts';

const NewWalkDialog = late(() => import('../survey/NewWalkDialog.tsx').then((m) => m.NewWalkDialog));

/** mm: what stands on the sheet until the walls are drawn; a room has walls at all times. */
const PLACEHOLDER = { length: 8000, width: 6000 } as const;

/** Asks for what a blank sheet needs. All of it can be changed later. */
export function NewClassroomDialog({ onClose }: { onClose: () => void }) {
  const [name, setName] = useState('');
  const [units, setUnits] = useState<LengthUnits>('metric');
  const [length, setLength] = useState<number | null>(null);
  const [width, setWidth] = useState<number | null>(null);
  const [groups, setGroups] = useState<readonly DraftGroup[]>([
    { key: 'g1', name: 'three-year-olds', fromMonths: 36, toMonths: 48, count: 8 },
    { key: 'g2', name: 'four-year-olds', fromMonths: 48, toMonths: 60, count: 8 },
    { key: 'g3', name: 'five-year-olds', fromMonths: 60, toMonths: 72, count: 8 },
  ]);
  const [ruleSet, setRuleSet] = useState('own');
  const [exitRules, setExitRules] = useState<ExitRuleChoice>('none');
  const [wrong, setWrong] = useState<string | null>(null);
  /** The classroom to be while its room is measured. */
  const [measured, setMeasured] = useState<Classroom | null>(null);
  const isNamed = name.trim() !== '';
  const isReady = isNamed && length !== null && width !== null;

  function make(length: number, width: number, isDrawnLater = false): Classroom | null {
    try {
      return newClassroom({
        name: name.trim(),
        units,
        length,
        width,
        ruleSet,
        exitRules: ruleSet === 'own' || exitRules === 'none' ? null : exitRules,
        isDrawnLater,
        groups: groups.map(({ key: _key, ...group }) => group),
      });
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
      return null;
    }
  }
  function begin(length: number, width: number, isDrawnLater = false) {
    const classroom = make(length, width, isDrawnLater);
    if (!classroom) return;
    onClose();
    openAsNew(classroom);
  }

  if (measured)
    return (
      <Suspense fallback={null}>
        <NewWalkDialog classroom={measured} onPut={onClose} onClose={() => setMeasured(null)} />
      </Suspense>
    );
  return (
    <Dialog title="New classroom" isOpen onClose={onClose} isWide>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          if (length !== null && width !== null && isNamed) begin(length, width);
        }}
      >
        <div className="form-row">
          <Field label="Name of the class" echo={sayFull(name)}>
            {(wiring) => (
              <input {...wiring} autoFocus maxLength={MOST_NAME} value={name} onChange={(event) => setName(event.target.value)} />
            )}
          </Field>
          <Choice
            label="Lengths in"
            value={units}
            options={[
              { value: 'metric', text: 'metres' },
              { value: 'imperial', text: 'feet and inches' },
            ]}
            onChange={setUnits}
          />
        </div>
        <fieldset className="form-part">
          <legend>The room</legend>
          <p className="aside">
            Inside the walls. A room that is no rectangle: type its greatest length and width, then move or draw its walls on the sheet.
          </p>
          <div className="form-row">
            <LengthField
              label="Length, along the page"
              value={length}
              units={units}
              onTyping={setLength}
              onCommit={setLength}
              least={500}
              most={100_000}
              placeholder={units === 'metric' ? '8.40' : "27' 6"}
            />
            <LengthField
              label="Width, down the page"
              value={width}
              units={units}
              onTyping={setWidth}
              onCommit={setWidth}
              least={500}
              most={100_000}
              placeholder={units === 'metric' ? '7.60' : "25'"}
            />
          </div>
        </fieldset>
        <GroupsForm groups={groups} onChange={setGroups} />
        <Select label="Rules on how many children a room takes" value={ruleSet} options={ruleSetOptions(ruleSet)} onChange={setRuleSet} />
        {ruleSet !== 'own' && (
          <>
            <Select label="Rules on the ways out" value={exitRules} options={exitRuleOptions} onChange={setExitRules} />
            <p className="aside">
              Those on children say nothing of exits. Not chosen, the checks of the ways out cannot answer; your fire authority decides.
            </p>
          </>
        )}
        {wrong && (
          <p role="alert" className="trouble-text">
            {wrong}
          </p>
        )}
        <div className="verbs">
          <Button kind="strong" type="submit" isDisabled={!isReady}>
            Lay out the sheet
          </Button>
          <TextLink
            isDisabled={!isNamed}
            onPress={() => {
              begin(PLACEHOLDER.length, PLACEHOLDER.width, true);
              announcer.say('Choose "Wall" and draw the first wall. Your walls take the place of the ones that stand there now.');
            }}
          >
            Draw the walls instead
          </TextLink>
          <TextLink isDisabled={!isNamed} onPress={() => setMeasured(make(PLACEHOLDER.length, PLACEHOLDER.width))}>
            Measure it wall by wall
          </TextLink>
          <TextLink onPress={onClose}>Leave it</TextLink>
          {!isReady && <span className="aside">A name, and length and width (or drawn walls), are wanted.</span>}
        </div>
      </form>
    </Dialog>
  );
}

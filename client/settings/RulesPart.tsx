import type { Commands } from '#model/document/types.ts';
import { ownPerChild } from '#model/measures/chosenRules.ts';
import { exitRuleOptions, exitRulesName, exitRulesThatSuit, ruleSetOptions, servicesOf } from '../text/ruleSets.ts';
import { AreaField } from '../ui/AreaField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { Select } from '../ui/Select.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { Tick } from '../ui/Tick.tsx';
import { askedQuestions } from './askedQuestions.ts';
import { OtherRooms } from './OtherRooms.tsx';
import type { Part } from './part.ts';

/** The ways out have rules of their own. Where they are of another country than the licence, that is said beside the two, with the way to change it. */
function WaysOut({ classroom: { ruleSet, exitRules }, change }: Pick<Part, 'classroom' | 'change'>) {
  const suits = exitRulesThatSuit(ruleSet);
  if (exitRules === null || suits === null || suits === exitRules)
    return <p className="aside">Ways out have rules of their own: choosing another licence leaves them as they are.</p>;
  return (
    <p role="status">
      The ways out still go by {exitRulesName(exitRules)}: another licence leaves them as they are.{' '}
      <TextLink onPress={() => change({ exitRules: suits })}>Let them go by {exitRulesName(suits)}</TextLink>
    </p>
  );
}

type Answer = 'open' | 'deduct' | 'count';

/** Which licensing rules count, and what the class answers where they are silent. */
export function RulesPart({ classroom, change, changeRoom }: Part & { changeRoom: Commands['changeRoom'] }) {
  const { asked, room } = classroom;
  const { units } = classroom.display;

  const services = servicesOf(classroom.ruleSet);

  function setOwnFloor(perChild: number | null) {
    const { perChild: _old, ...others } = classroom.options['places/area'] ?? {};
    change({ options: { ...classroom.options, 'places/area': perChild === null ? others : { ...others, perChild } } });
  }

  function answer(category: string, given: Answer) {
    const { [category]: _old, ...others } = asked;
    change({ asked: given === 'open' ? others : { ...others, [category]: given } });
  }

  return (
    <fieldset className="form-part">
      <legend>Rules</legend>
      <p className="aside">Not legal advice: your licensing authority and your fire authority decide.</p>
      <div className="form-row">
        <Select
          label="How many children a room takes"
          value={classroom.ruleSet}
          options={ruleSetOptions(classroom.ruleSet)}
          onChange={(ruleSet) => change({ ruleSet })}
        />
        {services.length > 0 && (
          <Select
            label="Kind of service"
            value={classroom.service ?? ''}
            options={[{ value: '', text: 'not said yet' }, ...services.map((service) => ({ value: service, text: service }))]}
            onChange={(service) => change({ service: service === '' ? null : service })}
          />
        )}
        <AreaField
          label="Own floor a child"
          value={ownPerChild(classroom)}
          units={units}
          least={0.1}
          most={100}
          mayBeEmpty
          onCommit={setOwnFloor}
          echo={ownPerChild(classroom) === null ? 'empty: the figure of the rules' : 'a class rule, in place of the rules\u2019 figure'}
        />
        <Select
          label="Ways out"
          value={classroom.exitRules ?? 'none'}
          options={exitRuleOptions}
          onChange={(exitRules) => change({ exitRules: exitRules === 'none' ? null : exitRules })}
        />
      </div>
      <WaysOut classroom={classroom} change={change} />
      <Tick isTicked={classroom.sprinklered} onChange={(sprinklered) => change({ sprinklered })}>
        The building has sprinklers
      </Tick>
      <div className="form-row">
        <NumberField
          label="Toilets"
          value={room.toilets}
          least={0}
          most={1000}
          mayBeEmpty
          onCommit={(toilets) => changeRoom({ toilets })}
        />
        <NumberField
          label="Wash basins"
          value={room.basins}
          least={0}
          most={1000}
          mayBeEmpty
          onCommit={(basins) => changeRoom({ basins })}
        />
      </div>
      <OtherRooms rooms={room.otherRooms} units={units} onChange={(otherRooms) => changeRoom({ otherRooms })} />
      <h3>Where the rules do not say</h3>
      <p className="aside">Does this floor count for the children? Ask your authority; an open question is reckoned both ways.</p>
      <div className="form-row">
        {askedQuestions(classroom).map(({ category, text }) => (
          <Select
            key={category}
            label={text}
            value={asked[category] ?? 'open'}
            options={[
              { value: 'open', text: 'not answered' },
              { value: 'count', text: 'it counts' },
              { value: 'deduct', text: 'it is deducted' },
            ]}
            onChange={(given: Answer) => answer(category, given)}
          />
        ))}
      </div>
    </fieldset>
  );
}

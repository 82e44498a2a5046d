import { useLayoutEffect, useMemo, useRef } from 'react';
import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { leadSentence } from '../checks/leadSentence.ts';
import { WhyLink } from '../checks/WhyLink.tsx';
import { frontActions } from '../front/frontActions.ts';
import { keyMeaning } from '../front/frontKeys.ts';
import type { FrontLayout, FrontTray } from '../front/frontLayout.ts';
import { ownValue } from '../front/ownValue.ts';
import { trayMend } from '../front/putInStep.ts';
import { sideTitle } from '../front/shelfNames.ts';
import { spaceTrays } from '../front/spaceTrays.ts';
import { useRestingReport, useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';
import type { ChecksOf } from './trayChecks.ts';

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
  readonly layout: FrontLayout;
  readonly tray: FrontTray;
  readonly checks: ChecksOf;
}

/** What can be done with the chosen tray: the same as by dragging, in words and typed figures. */
export function TrayVerbs({ scene, side, layout, tray, checks }: Props) {
  const session = useSession();
  const units = useUnits();
  const actions = useMemo(() => frontActions(session), [session]);
  const direction = scene.classroom.display.readingDirection;
  const gap = trayGapOf(scene.classroom);
  const report = useRestingReport();
  const mend = useMemo(() => trayMend(scene, report, tray.id), [scene, report, tray.id]);
  const board = layout.boards.find((each) => each.trays.some((one) => one.id === tray.id));
  const others = scene.sides.filter((each) => each !== side);
  const box = useRef<HTMLDivElement>(null);
  // They take room from the list in which the tray was just chosen.
  useLayoutEffect(() => keepChosenInList(box.current?.parentElement), []);

  function press(key: string, shift: boolean): void {
    const meaning = keyMeaning(layout, tray.id, { key, shift }, gap, direction);
    if (meaning?.does === 'nothing') session.announce(meaning.say);
    if (meaning?.does === 'stand') actions.stand(layout, meaning.board, tray.id, meaning.places, meaning.shortBy);
  }

  return (
    <div ref={box} className="tray-verbs">
      <p className="tray-chosen">
        <b>{tray.name}</b> <span className="aside">{tray.isMeasured ? `${sayLength(tray.width, units)} wide` : 'size not known'}</span>
      </p>
      <div className="verbs">
        {mend && <Button onPress={() => mend.run(session)}>{mend.words}</Button>}
        {others.length > 0 && (
          <VerbMenu
            label="Other shelf"
            items={others.map((each) => ({
              id: `${each.piece.id}/${each.side}`,
              text: sideTitle(scene, each),
              run: () => void actions.toShelf(tray.id, each),
            }))}
          />
        )}
        <TextLink onPress={() => actions.putAway(tray.id)}>Put away</TextLink>
        <TextLink onPress={() => actions.turn(tray.id)}>Turn it</TextLink>
        {board && (
          <VerbMenu
            label="Space the trays"
            items={(['evenly', 'close'] as const).map((how) => ({
              id: how,
              text: `${how === 'evenly' ? 'Evenly' : 'Side by side'} ${board.level === null ? 'on top' : `on the ${board.name.toLowerCase()} board`}`,
              run: () => spaceTrays(session, side, board.level?.id ?? null, how),
            }))}
          />
        )}
      </div>
      {(checks.get(tray.id) ?? []).map((finding) => (
        <p key={finding.key} className="tray-finding">
          <SeverityWord severity={finding.severity} /> {leadSentence(finding.message)[0]}{' '}
          <WhyLink rule={finding.rule} about={finding.message} />
        </p>
      ))}
      <details
        className="tray-more"
        onToggle={({ currentTarget }) => currentTarget.open && currentTarget.scrollIntoView({ block: 'nearest' })}
      >
        <summary>Slide it, or type where it stands</summary>
        <fieldset className="tray-slide">
          <legend className="only-heard">Slide {tray.name}</legend>
          <Button kind="quiet" aria-label="To the left, 10 mm" onPress={() => press('ArrowLeft', false)}>
            ←
          </Button>
          <Button kind="quiet" aria-label="To the right, 10 mm" onPress={() => press('ArrowRight', false)}>
            →
          </Button>
          <Button kind="quiet" aria-label="To the board above" onPress={() => press('ArrowUp', false)}>
            ↑
          </Button>
          <Button kind="quiet" aria-label="To the board below" onPress={() => press('ArrowDown', false)}>
            ↓
          </Button>
        </fieldset>
        <div className="tray-figures">
          {board && (
            <LengthField
              label="From the left end"
              value={tray.x}
              units={units}
              least={0}
              most={100_000}
              onCommit={(mm) => mm !== null && actions.stand(layout, board, tray.id, new Map([[tray.id, mm]]))}
            />
          )}
          <LengthField
            label="Behind the edge"
            value={tray.tray.placement.y}
            units={units}
            least={0}
            onCommit={(mm) => mm !== null && session.commands.place(session.arrangement().id, { ...tray.tray.placement, y: mm })}
          />
          <LengthField
            label="Wide"
            value={tray.tray.width}
            units={units}
            onCommit={(mm) =>
              mm !== null &&
              session.commands.changeMaterial(tray.id, ownValue(tray.tray.material, tray.tray.placement.turned ? 'depth' : 'width', mm))
            }
          />
        </div>
      </details>
    </div>
  );
}

/** The page itself is not scrolled. */
function keepChosenInList(section: HTMLElement | null | undefined): void {
  const list = section?.querySelector('.tray-scroll');
  const row = list?.querySelector('tr[aria-current]')?.getBoundingClientRect();
  if (!list || !row) return;
  const { top, bottom } = list.getBoundingClientRect();
  if (row.bottom > bottom) list.scrollTop += row.bottom - bottom;
  else if (row.top < top) list.scrollTop -= top - row.top;
}

import { Suspense, useState } from 'react';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { useSession, useUnits } from '../session/hooks.ts';
import type { Session } from '../session/types.ts';
import { figure } from '../text/figure.ts';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';
import { sayReading } from './readingOrder.ts';
import { sideName, sideTitle, sideWord } from './shelfNames.ts';
import { otherSide } from './shownSide.ts';

const KneelDialog = late(() => import('./kneel/KneelDialog.tsx').then((m) => m.KneelDialog));

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
  /** A tray is in hand: where there is a mouse, the places to let it go stand over the head. */
  readonly isHeld: boolean;
  readonly title: string;
}

/** Title and verbs of the front. */
export function FrontHead({ scene, side, isHeld, title }: Props) {
  const session = useSession();
  const units = useUnits();
  const [isKneeling, setKneeling] = useState(false);
  const other = otherSide(scene, side);
  const { piece } = side;
  const name = piece.name.replace(/^\s*shelf\s*\d*\s*/i, '');
  const size = `${figure(side.width, units)} × ${figure(side.side === 'left' || side.side === 'right' ? piece.width : piece.depth, units)}`;
  const high = piece.height === null ? 'height not known' : `${sayLength(piece.height, units)} high`;
  const read = sayReading(piece, scene.classroom.display.readingDirection);
  return (
    <div className="front-head" data-held={isHeld || undefined}>
      <h2 id="front-title">{piece.sides.length > 1 ? title : `${title}, ${sideWord(side.side)}`}</h2>
      <span className="aside front-what">{[name, `${size}, ${high}`, read].filter((part) => part !== '').join(' · ')}</span>
      <span className="front-verbs">
        <TextLink onPress={() => setKneeling(true)}>Kneel here</TextLink>
        {other && (
          <TextLink
            onPress={() => {
              session.setView({ frontOf: { piece: other.piece.id, side: other.side } });
              session.announce(`${sideName(scene, other)} is shown.`);
            }}
          >
            Other side
          </TextLink>
        )}
        <VerbMenu
          label="Another front"
          items={scene.sides.map((each) => ({
            id: `${each.piece.id}/${each.side}`,
            text: sideTitle(scene, each),
            run: () =>
              session.setView({ frontOf: { piece: each.piece.id, side: each.side }, chosen: { kind: 'piece', id: each.piece.id } }),
            isOff: each === side,
          }))}
        />
      </span>
      {isKneeling && (
        <Suspense fallback={null}>
          <KneelDialog scene={scene} side={side} material={chosenOn(side, session)} onClose={() => setKneeling(false)} />
        </Suspense>
      )}
    </div>
  );
}

/** The chosen tray, where it stands on this side. */
function chosenOn(side: SceneSide, session: Session): string | null {
  const { chosen } = session.view();
  const isHere = chosen?.kind === 'tray' && side.boards.some((board) => board.trays.some((tray) => tray.material.id === chosen.id));
  return isHere ? chosen.id : null;
}

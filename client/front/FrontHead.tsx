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
import { sideName, sideShort, sideTitle, sideWord } from './shelfNames.ts';
import { otherSide } from './shownSide.ts';
import type { TrayInHand } from './useTrayDrag.ts';

const KneelDialog = late(() => import('./kneel/KneelDialog.tsx').then((m) => m.KneelDialog));

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
  readonly held: TrayInHand | null;
  readonly title: string;
}

/** Title and verbs of the front; while a tray is held, the places beside this shelf where it can be let go. */
export function FrontHead({ scene, side, held, title }: Props) {
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
    <div className="front-head" data-held={held !== null || undefined}>
      {held && <DropStrip scene={scene} side={side} over={held.over} />}
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

/** In the place of the head, which keeps its height: the drawing must not slide away under the finger. */
function DropStrip({ scene, side, over }: { scene: Scene; side: SceneSide; over: string | null }) {
  return (
    <div className="front-drop-strip">
      <span className="front-drop-label">Let go on</span>
      <span className="front-drop" data-drop="table" data-over={over === 'table' || undefined}>
        the table
      </span>
      <span className="front-drop-label">or shelf</span>
      {scene.sides
        .filter((each) => each !== side)
        .map((each) => {
          const key = `${each.piece.id}/${each.side}`;
          return (
            <span key={key} className="front-drop" data-drop={key} data-over={over === key || undefined}>
              {sideShort(scene, each)}
            </span>
          );
        })}
    </div>
  );
}

/** The chosen tray, where it stands on this side. */
function chosenOn(side: SceneSide, session: Session): string | null {
  const { chosen } = session.view();
  const isHere = chosen?.kind === 'tray' && side.boards.some((board) => board.trays.some((tray) => tray.material.id === chosen.id));
  return isHere ? chosen.id : null;
}

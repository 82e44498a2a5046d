import { Suspense, useState } from 'react';
import type { Finding } from '#model/findings/finding.ts';
import { boardPart } from '#model/findings/sayBoard.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { useScene } from '../session/hooks.ts';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';

const KneelDialog = late(() => import('../front/kneel/KneelDialog.tsx').then((m) => m.KneelDialog));

/** From a finding about seeing to the shelf as she sees it, before the first thing of that board. */
export function KneelLink({ finding }: { finding: Finding }) {
  const scene = useScene();
  const [isKneeling, setKneeling] = useState(false);
  const place = placeOf(scene, finding);
  if (!place) return null;
  return (
    <>
      <TextLink aria-label={`Kneel here: ${finding.message}`} onPress={() => setKneeling(true)}>
        Kneel here
      </TextLink>
      {isKneeling && (
        <Suspense fallback={null}>
          <KneelDialog scene={scene} side={place.side} material={place.material} onClose={() => setKneeling(false)} />
        </Suspense>
      )}
    </>
  );
}

function placeOf(scene: Scene, { key, subjects }: Finding): { side: SceneSide; material: string | null } | null {
  const sides = scene.sides.filter(({ piece }) => piece.id === subjects[0]);
  for (const side of sides) {
    const board = side.boards.find((each) => `${key.split('#')[1] ?? ''}/`.startsWith(`${boardPart(each)}/`));
    if (board) return { side, material: board.trays[0]?.material.id ?? null };
  }
  return sides[0] ? { side: sides[0], material: null } : null;
}

import { Suspense, useState } from 'react';
import type { SceneSide } from '#model/scene/types.ts';
import type { FrontLayout } from '../front/frontLayout.ts';
import { late } from '../ui/late.tsx';

const BoardFigures = late(() => import('./BoardFigures.tsx').then((m) => m.BoardFigures));

/** The boards of the shelf in figures, which come when they are first unfolded. */
export function BoardEditor(props: { side: SceneSide; layout: FrontLayout }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="board-editor" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Boards and their heights</summary>
      {isOpen && (
        <Suspense fallback={null}>
          <BoardFigures {...props} />
        </Suspense>
      )}
    </details>
  );
}

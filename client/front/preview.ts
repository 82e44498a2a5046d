import type { FrontLayout, FrontTray } from './frontLayout.ts';

/** Trays as they would stand if let go now: on which board and where (mm). */
export interface TrayPreview {
  readonly board: string;
  readonly places: ReadonlyMap<string, number>;
}

/** The front with trays where they would come to stand. Nothing is written. */
export function withPreview(layout: FrontLayout, preview: TrayPreview | null): FrontLayout {
  if (!preview) return layout;
  const all = new Map(layout.boards.flatMap((board) => board.trays.map((tray) => [tray.id, tray] as const)));
  const moved: FrontTray[] = [...preview.places].flatMap(([id, x]) => {
    const tray = all.get(id);
    return tray ? [{ ...tray, x }] : [];
  });
  return {
    ...layout,
    boards: layout.boards.map((board) => {
      const staying = board.trays.filter((tray) => !preview.places.has(tray.id));
      if (board.key === preview.board) return { ...board, trays: [...staying, ...moved].sort((p, q) => p.x - q.x), free: [] };
      return staying.length === board.trays.length ? board : { ...board, trays: staying };
    }),
  };
}

/** The front with one board at another height, while it is dragged (mm). */
export function withBoardAt(layout: FrontLayout, key: string, surface: number): FrontLayout {
  return { ...layout, boards: layout.boards.map((board) => (board.key === key ? { ...board, surface } : board)) };
}

/** mm: boards move in steps of this, and keep this much clear height between them while dragged */
const BOARD_STEP = 10;
const LEAST_CLEAR = 60;

/** Keeps a dragged board between the boards above and below it (mm). */
export function boardHeight(layout: FrontLayout, key: string, wanted: number): number {
  const others = layout.boards.filter((board) => board.key !== key && board.level !== null);
  const now = layout.boards.find((board) => board.key === key)?.surface ?? wanted;
  const below = Math.max(0, ...others.filter((b) => b.surface < now).map((b) => b.surface + LEAST_CLEAR + layout.panel));
  const above = Math.min(layout.height, ...others.filter((b) => b.surface > now).map((b) => b.surface - LEAST_CLEAR - layout.panel));
  return Math.max(below, Math.min(above, Math.round(wanted / BOARD_STEP) * BOARD_STEP));
}

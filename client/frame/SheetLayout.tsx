import { type ReactNode, useState } from 'react';
import { ScrollPart } from '../ui/ScrollPart.tsx';
import { FootStrip } from './FootStrip.tsx';
import { TitleBlock } from './TitleBlock.tsx';
import { useLayout } from './useLayout.ts';

interface Props {
  /** The drawing with its list. */
  readonly main: ReactNode;
  /** What the right column says. */
  readonly right: ReactNode;
  readonly mainName: string;
  readonly rightName: string;
}

/** A sheet with one drawing and a right column: side by side when there is room, one at a time on a phone. */
export function SheetLayout({ main, right, mainName, rightName }: Props) {
  const layout = useLayout();
  const [shown, setShown] = useState<'main' | 'right'>('main');
  const isPhone = layout === 'phone';
  return (
    <div className={`sheet-layout ${layout}`}>
      {isPhone && (
        <fieldset className="swap" aria-label="What is shown">
          <SwapButton isShown={shown === 'main'} onPress={() => setShown('main')}>
            {mainName}
          </SwapButton>
          <SwapButton isShown={shown === 'right'} onPress={() => setShown('right')}>
            {rightName}
          </SwapButton>
        </fieldset>
      )}
      {(!isPhone || shown === 'main') && (
        <ScrollPart className="layout-main" label={mainName}>
          {main}
        </ScrollPart>
      )}
      <div className="layout-right">
        {(!isPhone || shown === 'right') && (
          <ScrollPart className="right-panel" label={rightName}>
            {right}
          </ScrollPart>
        )}
        {layout !== 'tablet' && <TitleBlock />}
      </div>
      {layout === 'tablet' && <FootStrip />}
    </div>
  );
}

export function SwapButton({ isShown, onPress, children }: { isShown: boolean; onPress: () => void; children: ReactNode }) {
  return (
    <button type="button" aria-pressed={isShown} onClick={onPress}>
      {children}
    </button>
  );
}

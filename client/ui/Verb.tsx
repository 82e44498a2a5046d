import type { ButtonHTMLAttributes, PointerEvent } from 'react';

export interface VerbProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className' | 'disabled' | 'onClick'> {
  readonly onPress?: () => void;
  readonly isDisabled?: boolean;
  /** A pointer rests on it; a finger never only rests. */
  readonly onHoverStart?: () => void;
  readonly onHoverEnd?: () => void;
}

/** The browser's own button, which the first sheet waits for nothing to have. */
export function Verb({ onPress, isDisabled = false, onHoverStart, onHoverEnd, ...rest }: VerbProps & { readonly className: string }) {
  return (
    <button
      type="button"
      {...rest}
      disabled={isDisabled}
      onClick={onPress}
      onPointerEnter={onHoverStart && ((event: PointerEvent) => event.pointerType !== 'touch' && onHoverStart())}
      onPointerLeave={onHoverEnd}
    />
  );
}

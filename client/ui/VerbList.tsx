import type { RefObject } from 'react';
import { Menu, MenuItem, Popover } from 'react-aria-components';

export interface VerbItem {
  readonly id: string;
  readonly text: string;
  readonly run: () => void;
  readonly isOff?: boolean;
}

interface Props {
  readonly label: string;
  readonly items: readonly VerbItem[];
  readonly opener: RefObject<HTMLElement | null>;
  readonly onClose: () => void;
}

/** More than these stand in two columns on a finger's screen. */
const SHORT = 12;

/** The open list of verbs; what has no room on the page is scrolled to inside its box. */
export function VerbList({ label, items, opener, onClose }: Props) {
  return (
    <Popover
      aria-label={label}
      className={items.length > SHORT ? 'menu-paper long' : 'menu-paper'}
      placement="bottom end"
      triggerRef={opener}
      isOpen
      onOpenChange={(isOpen) => !isOpen && onClose()}
      trigger="MenuTrigger"
    >
      <Menu aria-label={label} autoFocus="first" onClose={onClose} disabledKeys={items.filter((item) => item.isOff).map((item) => item.id)}>
        {items.map((item) => (
          <MenuItem key={item.id} id={item.id} className="menu-item" onAction={item.run}>
            {item.text}
          </MenuItem>
        ))}
      </Menu>
    </Popover>
  );
}

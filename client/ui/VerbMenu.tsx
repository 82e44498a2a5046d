import { Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { TextLink } from './TextLink.tsx';

interface Props {
  readonly label: string;
  readonly items: readonly { readonly id: string; readonly text: string; readonly run: () => void; readonly isOff?: boolean }[];
}

/** Words that open a list of verbs. */
export function VerbMenu({ label, items }: Props) {
  return (
    <MenuTrigger>
      <TextLink ink>{label}</TextLink>
      <Popover className="menu-paper" placement="bottom end">
        <Menu aria-label={label} disabledKeys={items.filter((item) => item.isOff).map((item) => item.id)}>
          {items.map((item) => (
            <MenuItem key={item.id} id={item.id} className="menu-item" onAction={item.run}>
              {item.text}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

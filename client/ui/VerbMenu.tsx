import { Suspense, useRef, useState } from 'react';
import { late } from './late.tsx';
import type { VerbItem } from './VerbList.tsx';

interface Props {
  readonly label: string;
  readonly items: readonly VerbItem[];
}

const load = () => import('./VerbList.tsx');
const VerbList = late(() => load().then((m) => m.VerbList));

/** Words that open a list of verbs. The list itself comes when it is first wanted: the sheet is drawn before it. */
export function VerbMenu({ label, items }: Props) {
  const [isOpen, setOpen] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const open = () => setOpen(true);
  return (
    <>
      <button
        ref={opener}
        type="button"
        className="text-link ink"
        aria-haspopup="menu"
        aria-expanded={isOpen}
        onPointerEnter={() => void load()}
        onFocus={() => void load()}
        onClick={open}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown') return;
          event.preventDefault();
          open();
        }}
      >
        {label}
      </button>
      {isOpen && (
        <Suspense fallback={null}>
          <VerbList label={label} items={items} opener={opener} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  );
}

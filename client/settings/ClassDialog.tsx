import { useClassroom, useMayChange, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { AccessPart } from './AccessPart.tsx';
import { AdultsPart } from './AdultsPart.tsx';
import { ChildrenPart } from './ChildrenPart.tsx';
import { EnrolmentPart } from './EnrolmentPart.tsx';
import { FloorWorkPart } from './FloorWorkPart.tsx';
import { NamePart } from './NamePart.tsx';
import { OrderPart } from './OrderPart.tsx';
import { RulesPart } from './RulesPart.tsx';

/** Everything of the class that is not drawn. Each change is taken at once and can be taken back. */
export function ClassDialog({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const classroom = useClassroom();
  const mayChange = useMayChange();
  const part = { classroom, change: session.commands.changeClass };
  return (
    <Dialog title="The class" isOpen onClose={onClose} isWide>
      <p className="aside">
        {mayChange ? 'Each change is taken at once, shared, and can be taken back.' : 'You may look at this, not change it.'}
      </p>
      <fieldset className="class-parts" disabled={!mayChange}>
        <NamePart {...part} />
        <ChildrenPart {...part} />
        <EnrolmentPart {...part} />
        <AdultsPart {...part} />
        <RulesPart {...part} changeRoom={session.commands.changeRoom} />
        <AccessPart {...part} />
        <FloorWorkPart {...part} />
        <OrderPart {...part} />
      </fieldset>
      <div className="verbs">
        <Button kind="strong" onPress={onClose}>
          Back to the sheet
        </Button>
      </div>
    </Dialog>
  );
}

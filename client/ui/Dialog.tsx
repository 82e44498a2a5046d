import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

interface Props {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly isWide?: boolean;
  readonly children: ReactNode;
}

/** A sheet laid over the sheet. Escape and a press beside it lay it aside. */
export function Dialog({ title, isOpen, onClose, isWide = false, children }: Props) {
  return (
    <ModalOverlay className="dialog-veil" isOpen={isOpen} onOpenChange={(open) => !open && onClose()} isDismissable>
      <Modal className={isWide ? 'dialog-paper wide' : 'dialog-paper'}>
        <AriaDialog className="dialog-neat">
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}

import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useRootMark } from './useRootMark.ts';

interface Props {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly isWide?: boolean;
  /** On paper only what it holds in .print-out is left (printOut.css). */
  readonly isPrinted?: boolean;
  readonly children: ReactNode;
}

/** A sheet laid over the sheet. Escape and a press beside it lay it aside. */
export function Dialog({ title, isOpen, onClose, isWide = false, isPrinted = false, children }: Props) {
  useRootMark('dialog', isOpen);
  useRootMark('printed', isOpen && isPrinted);
  return (
    <ModalOverlay
      className={isPrinted ? 'dialog-veil printed' : 'dialog-veil'}
      isOpen={isOpen}
      onOpenChange={(open) => !open && onClose()}
      isDismissable
    >
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

import type { ReactNode } from 'react';
import { Dialog, Modal, ModalOverlay } from 'react-aria-components';

interface FullViewProps {
  /** The class of its dialog, and what those around it begin with. */
  readonly name: string;
  readonly label: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A view over the whole window. Closing it leads back to the desk as it was. */
export function FullView({ name, label, isOpen, onClose, children }: FullViewProps) {
  return (
    <ModalOverlay
      className={`full-view ${name}-overlay`}
      isOpen={isOpen}
      onOpenChange={(open) => !open && onClose()}
    >
      <Modal className={`${name}-modal`}>
        <Dialog className={name} aria-label={label}>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

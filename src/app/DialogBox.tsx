import './dialog.css';
import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { words } from '../words/index.ts';

const says = words.shell.dialog;

interface DialogBoxProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** Whether a press beside it closes it, as Escape always does; as it is where nothing else is said. */
  readonly isDismissable?: boolean;
  readonly width?: 'narrow' | 'medium' | 'wide' | 'widest';
  readonly role?: 'dialog' | 'alertdialog';
  readonly className?: string;
  readonly children: ReactNode;
}

/** A box over the desk: its heading, what it is about, and a `DialogFoot`. */
export function DialogBox(props: DialogBoxProps) {
  const { title, isOpen, onClose, isDismissable = true, width = 'narrow', role = 'dialog' } = props;
  return (
    <ModalOverlay
      className="overlay"
      isOpen={isOpen}
      isDismissable={isDismissable}
      onOpenChange={(open) => !open && onClose()}
    >
      <Modal className="modal" data-width={width}>
        <Dialog role={role} className={props.className ? `dialog ${props.className}` : 'dialog'}>
          <Heading slot="title">{title}</Heading>
          {props.children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

interface DialogFootProps {
  readonly onLeave: () => void;
  /** What a box is called off with, or closed with where it has done its work already. */
  readonly leave?: 'cancel' | 'close';
  /** What the box is for; without `onPress` it sends the form that the foot stands in. */
  readonly main?: { readonly label: string; readonly isDisabled?: boolean; readonly onPress?: () => void };
  /** Which button has the focus at first; none where a field has it. */
  readonly focus?: 'leave' | 'main' | 'field';
  /** What goes on, or what else may be done. */
  readonly children?: ReactNode;
}

/** The foot of a box: what else there is at the left; at the right the way out and, last, what the box is for. */
export function DialogFoot({ onLeave, leave, main, focus, children }: DialogFootProps) {
  const focused = focus ?? (main ? 'main' : 'leave');
  return (
    <div className="dialog-foot">
      <div className="dialog-aside">{children}</div>
      <Button
        className={main ? 'button' : 'button primary'}
        autoFocus={focused === 'leave'}
        onPress={onLeave}
      >
        {says[leave ?? (main ? 'cancel' : 'close')]}
      </Button>
      {main && (
        <Button
          className="button primary"
          autoFocus={focused === 'main'}
          isDisabled={main.isDisabled ?? false}
          {...(main.onPress ? { onPress: main.onPress } : { type: 'submit' })}
        >
          {main.label}
        </Button>
      )}
    </div>
  );
}

/** What is longer than its box, and scrolls in it; keys reach it. */
export function DialogScroll(props: { label: string; className?: string; children: ReactNode }) {
  return (
    <section
      className={props.className ? `dialog-scroll ${props.className}` : 'dialog-scroll'}
      aria-label={props.label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
      tabIndex={0}
    >
      {props.children}
    </section>
  );
}

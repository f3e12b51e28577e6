import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { words } from '../words/index.ts';
import { useApp, useUi } from './context.ts';
import { ShortcutGroups } from './ShortcutGroups.tsx';

const says = words.shell.shortcuts;

/** Every key that does something, from the registry of commands and the table of the tools. */
export default function ShortcutsDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.shortcuts);
  const close = () => ui.setState({ shortcuts: false });
  return (
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal wide">
        <Dialog className="dialog">
          <Heading slot="title">{says.heading}</Heading>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
          <section className="shortcut-list" aria-label={says.list} tabIndex={0}>
            <ShortcutGroups />
          </section>
          <div className="dialog-buttons">
            <Button className="button primary" autoFocus onPress={close}>
              {words.shell.dialog.close}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

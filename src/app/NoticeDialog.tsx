import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { words } from '../words/index.ts';
import { useApp, useUi } from './context.ts';

const says = words.shell.dialog;

/** A sentence that stops the work until it is read: a refused file names the places in it. */
export function NoticeDialog() {
  const { ui } = useApp();
  const notice = useUi((state) => state.notice);
  const close = () => ui.setState({ notice: null });
  return (
    <ModalOverlay
      className="overlay"
      isOpen={notice !== null}
      isDismissable
      onOpenChange={(open) => !open && close()}
    >
      <Modal className="modal">
        <Dialog role="alertdialog" className="dialog">
          <Heading slot="title">{notice?.title}</Heading>
          <p>{notice?.text}</p>
          {notice && notice.details.length > 0 && (
            <ul className="details">
              {notice.details.map((detail) => (
                <li key={`${detail.path} ${detail.message}`}>
                  {detail.path && <code>{detail.path}</code>} {detail.message}
                </li>
              ))}
            </ul>
          )}
          <div className="dialog-buttons">
            {notice?.confirm && (
              <Button
                className="button"
                onPress={() => {
                  close();
                  notice.confirm?.run();
                }}
              >
                {notice.confirm.label}
              </Button>
            )}
            <Button className="button primary" autoFocus onPress={close}>
              {notice?.confirm ? says.cancel : says.close}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

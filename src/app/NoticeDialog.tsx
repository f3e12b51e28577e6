import { useApp, useUi } from './context.ts';
import { DialogBox, DialogFoot } from './DialogBox.tsx';

/** A sentence that stops the work until it is read: a refused file names the places in it. */
export function NoticeDialog() {
  const { ui } = useApp();
  const notice = useUi((state) => state.notice);
  const close = () => ui.setState({ notice: null });
  const confirm = notice?.confirm;
  return (
    <DialogBox role="alertdialog" title={notice?.title ?? ''} isOpen={notice !== null} onClose={close}>
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
      <DialogFoot
        onLeave={close}
        focus="leave"
        {...(confirm && {
          main: {
            label: confirm.label,
            onPress: () => {
              close();
              confirm.run();
            },
          },
        })}
      />
    </DialogBox>
  );
}

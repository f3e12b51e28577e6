import { words } from '../words/index.ts';
import { useApp, useUi } from './context.ts';
import { DialogBox, DialogFoot, DialogScroll } from './DialogBox.tsx';
import { ShortcutGroups } from './ShortcutGroups.tsx';

const says = words.shell.shortcuts;

/** Every key that does something, from the registry of commands and the table of the tools. */
export default function ShortcutsDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.shortcuts);
  const close = () => ui.setState({ shortcuts: false });
  return (
    <DialogBox width="wide" title={says.heading} isOpen={open} onClose={close}>
      <DialogScroll label={says.list} className="shortcut-list">
        <ShortcutGroups />
      </DialogScroll>
      <DialogFoot onLeave={close} />
    </DialogBox>
  );
}

import { useRef } from 'react';
import { Button, Dialog, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { words } from '../words/index.ts';
import { useApp, useBoard, useUi } from './context.ts';
import { Icon } from './icons.tsx';
import { capitalized } from './wording.ts';

const says = words.shell.steps;

/** The edits by name, the latest on top; choosing one goes to how things were right after it. */
export function StepsMenu() {
  const { ui } = useApp();
  const open = useUi((state) => state.steps);
  const any = useBoard((state) => state.undoLabel !== null || state.redoLabel !== null);
  const button = useRef<HTMLButtonElement>(null);
  return (
    <>
      <Button
        ref={button}
        className="icon-button narrow"
        aria-label={says.label}
        aria-haspopup="dialog"
        aria-expanded={open}
        isDisabled={!any}
        onPress={() => ui.setState({ steps: !open })}
      >
        <Icon name="down" size={14} />
      </Button>
      <Popover
        className="popover"
        triggerRef={button}
        placement="bottom start"
        isOpen={open}
        onOpenChange={(steps) => ui.setState({ steps })}
      >
        <Dialog aria-label={says.label} className="steps">
          <Steps />
        </Dialog>
      </Popover>
    </>
  );
}

function Steps() {
  const { board, say } = useApp();
  // Every edit changes the document, and with it this list.
  useBoard((state) => state.job);
  const { labels, at } = board.steps();
  const rows = [...labels.entries()].toReversed();
  return (
    <ListBox
      className="menu"
      aria-label={says.list}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[at]}
      autoFocus
      onSelectionChange={(keys) => {
        const [to] = keys;
        if (typeof to !== 'number') return;
        board.goTo(to);
        say(to === 0 ? says.saidAsOpened : says.wentTo(labels[to - 1] ?? ''));
      }}
    >
      {rows.map(([i, label]) => (
        <ListBoxItem key={i + 1} id={i + 1} textValue={label} className={i + 1 > at ? 'undone' : ''}>
          {capitalized(label)}
        </ListBoxItem>
      ))}
      <ListBoxItem id={0}>{says.asOpened}</ListBoxItem>
    </ListBox>
  );
}

import { Fragment, useEffect, useRef } from 'react';
import { Header, Keyboard, Menu, MenuItem, MenuSection, Popover, Separator } from 'react-aria-components';
import type { BoardState } from '../canvas/board.ts';
import { isEmpty, itemsOf, single } from '../canvas/selection.ts';
import { unproject } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import { pasteAny } from './clipboard.ts';
import { commandById } from './commands.ts';
import { useApp, useUi } from './context.ts';
import { onMac } from './controls.tsx';
import { nodeName, segmentName } from './places.ts';
import { printed } from './shortcut.ts';
import type { MenuPlace } from './ui.ts';
import { capitalized } from './wording.ts';

const says = words.shell.contextMenu;

/** What can be done with what is selected, in groups; those that cannot be done now are left out. */
const groups = [
  ['run.insert', 'run.lab', 'run.cap', 'run.uncap', 'run.part', 'run.join', 'edit.reverse', 'edit.selectRun'],
  ['edit.cut', 'edit.copy', 'edit.paste', 'edit.duplicate'],
  ['edit.mirrorX', 'edit.mirrorY', 'edit.rotate'],
  ['edit.alignWest', 'edit.alignSouth', 'edit.alignHigh'],
  ['edit.delete'],
];

/** For a place of a sheet where nothing is. */
const emptyGroups = [
  ['edit.undo', 'edit.redo'],
  ['edit.paste', 'edit.selectAll'],
  ['tool.hood', 'tool.draw', 'tool.cap'],
  ['view.fit', 'view.table', 'view.charts', 'view.lab'],
];

/** The menu of what is selected, at the pointer or at the row of the table that asked for it. */
export function ContextMenu() {
  const { ui } = useApp();
  const place = useUi((state) => state.menu);
  const anchor = useRef<HTMLSpanElement>(null);
  return (
    <>
      <span
        ref={anchor}
        className="menu-anchor"
        style={{ left: place?.x ?? 0, top: place?.y ?? 0 }}
        aria-hidden="true"
      />
      <Popover
        className="popover"
        triggerRef={anchor}
        placement="bottom start"
        offset={2}
        isOpen={place !== null}
        onOpenChange={(open) => !open && ui.setState({ menu: null })}
        aria-label={says.label}
      >
        {place && <Items place={place} />}
      </Popover>
    </>
  );
}

function Items({ place }: { place: MenuPlace }) {
  const app = useApp();
  const state = app.board.getState();
  const shown = (isEmpty(state.selection) ? emptyGroups : groups)
    .map((ids) => ids.map(commandById).filter((command) => command.enabled(state)))
    .filter((commands) => commands.length > 0);
  useReturnedFocus();
  return (
    <Menu
      className="menu"
      aria-label={nameOf(state)}
      autoFocus="first"
      onAction={(id) => {
        app.ui.setState({ menu: null });
        if (id !== 'edit.paste' || !place.on) return commandById(String(id)).run(app);
        const { sheet, point } = place.on;
        void pasteAny(app, unproject(point, sheet, Number.NaN));
      }}
    >
      {shown.map((commands, i) => (
        <Fragment key={commands[0]?.id}>
          {i > 0 && <Separator />}
          <MenuSection aria-label={nameOf(state)}>
            {i === 0 && <Header>{nameOf(state)}</Header>}
            {commands.map((command) => (
              <MenuItem key={command.id} id={command.id} textValue={command.title(state)}>
                <span>{command.title(state)}</span>
                {command.shortcuts[0] && <Keyboard>{printed(command.shortcuts[0], onMac)}</Keyboard>}
              </MenuItem>
            ))}
          </MenuSection>
        </Fragment>
      ))}
    </Menu>
  );
}

/** The menu was not opened by a button, so where the focus was has to be remembered here. */
function useReturnedFocus(): void {
  useEffect(() => {
    const before = document.activeElement;
    return () => {
      requestAnimationFrame(() => {
        const lost = document.activeElement === null || document.activeElement === document.body;
        if (lost && before instanceof HTMLElement && before.isConnected)
          before.focus({ preventScroll: true });
      });
    };
  }, []);
}

/** What the menu is about: "Turn 2", "3 things", "The sheet". */
function nameOf({ selection, solution, job }: BoardState): string {
  const one = single(selection);
  if (!one) {
    const count = itemsOf(selection).length;
    return count === 0 ? says.sheet : words.counts.things(count);
  }
  if (one.kind === 'node') return capitalized(nodeName(solution.route, one.id));
  if (one.kind === 'segment') return says.duct(segmentName(solution.route, one.id));
  const named = [...job.blocks, ...job.exits].find(({ id }) => id === one.id);
  return named?.name || capitalized(one.kind);
}

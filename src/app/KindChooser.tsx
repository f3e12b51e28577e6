import { Button, Keyboard, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { hasKinds, type KindTool, kindInHand, takeKind, toolKinds } from '../canvas/tools/tool-kinds.ts';
import { words } from '../words/index.ts';
import { useApp, useBoard } from './context.ts';
import { Icon } from './icons.tsx';

const says = words.shell.kinds;

/** What the tool in hand makes, where it makes things of several kinds: to be chosen before or while one is drawn. */
export function KindChooser() {
  const tool = useBoard((state) => state.tool);
  return hasKinds(tool) ? <Chooser tool={tool} /> : null;
}

function Chooser({ tool }: { readonly tool: KindTool }) {
  const { board } = useApp();
  const { id: now, name } = useBoard((state) => kindInHand(state, tool));
  return (
    <MenuTrigger>
      <Button className="kind-button" aria-label={says.chosen(says[tool], name)}>
        <span className="kind-what">{says[tool]}</span>
        <strong>{name}</strong>
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover" placement="bottom start" offset={4}>
        <Menu
          className="menu"
          aria-label={says[tool]}
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[now]}
          onSelectionChange={(keys) => {
            const [kind] = keys === 'all' ? [] : keys;
            if (kind !== undefined) takeKind(board, tool, String(kind));
          }}
        >
          {toolKinds[tool].map((kind, place) => (
            <MenuItem key={kind.id} id={kind.id} textValue={kind.name} className="kind-item">
              <span>{kind.name}</span>
              <Keyboard>{place + 1}</Keyboard>
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

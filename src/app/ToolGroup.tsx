import {
  Button,
  Keyboard,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
  Tooltip,
  TooltipTrigger,
} from 'react-aria-components';
import type { ToolId } from '../canvas/board.ts';
import { commandById } from './commands.ts';
import { useApp, useBoard } from './context.ts';
import { onMac } from './controls.tsx';
import { Icon, type IconName } from './icons.tsx';
import { printed } from './shortcut.ts';

interface Tool {
  readonly id: ToolId;
  readonly icon: IconName;
}

/** Tools of a kind behind one button, which shows the one of them that is in hand. */
export function ToolGroup({
  name,
  tools,
}: {
  readonly name: string;
  readonly tools: readonly [Tool, ...Tool[]];
}) {
  const app = useApp();
  const inHand = useBoard((state) => tools.find(({ id }) => id === state.tool));
  const title = useBoard((state) => (inHand ? commandById(`tool.${inHand.id}`).title(state) : ''));
  return (
    <div className="tool-group">
      <MenuTrigger>
        <TooltipTrigger delay={500} closeDelay={0}>
          <Button
            className="icon-button"
            aria-label={inHand ? `${name}: ${title}` : name}
            data-in-hand={inHand ? 'true' : undefined}
          >
            <Icon name={(inHand ?? tools[0]).icon} />
          </Button>
          <Tooltip className="tooltip" placement="right" offset={6}>
            {inHand ? title : name}
          </Tooltip>
        </TooltipTrigger>
        <Popover className="popover" placement="right top" offset={4}>
          <Menu className="menu" aria-label={name} onAction={(id) => commandById(String(id)).run(app)}>
            {tools.map(({ id, icon }) => {
              const command = commandById(`tool.${id}`);
              const words = command.title(app.board.getState());
              return (
                <MenuItem key={id} id={command.id} textValue={words} className="tool-item">
                  <Icon name={icon} />
                  <span>{words}</span>
                  {command.shortcuts[0] && <Keyboard>{printed(command.shortcuts[0], onMac)}</Keyboard>}
                </MenuItem>
              );
            })}
          </Menu>
        </Popover>
      </MenuTrigger>
    </div>
  );
}

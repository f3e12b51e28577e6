import { Separator, Toolbar } from 'react-aria-components';
import { CommandButton } from './controls.tsx';
import { UnderlayButton } from './underlay/UnderlayButton.tsx';

/** The tools, one of which is in hand. */
export function ToolRail() {
  return (
    <aside className="tool-rail" aria-label="Tools">
      <Toolbar orientation="vertical" aria-label="Tools">
        <CommandButton id="tool.select" icon="select" placement="right" />
        <CommandButton id="tool.pan" icon="pan" placement="right" />
        <Separator />
        <CommandButton id="tool.hood" icon="hood" placement="right" />
        <CommandButton id="tool.draw" icon="draw" placement="right" />
        <CommandButton id="tool.cap" icon="cap" placement="right" />
        <CommandButton id="tool.insert" icon="insert" placement="right" />
        <Separator />
        <CommandButton id="edit.delete" icon="remove" placement="right" />
        <CommandButton id="view.fit" icon="fit" placement="right" />
        <UnderlayButton />
      </Toolbar>
    </aside>
  );
}

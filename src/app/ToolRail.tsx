import { Separator, Toolbar } from 'react-aria-components';
import { words } from '../words/index.ts';
import { CommandButton } from './controls.tsx';
import { ToolGroup } from './ToolGroup.tsx';
import { UnderlayButton } from './underlay/UnderlayButton.tsx';

const says = words.shell.tools;

/** The tools, one of which is in hand. */
export function ToolRail() {
  return (
    <aside className="tool-rail" aria-label={says.label}>
      <Toolbar orientation="vertical" aria-label={says.label}>
        <CommandButton id="tool.select" icon="select" placement="right" />
        <CommandButton id="tool.pan" icon="pan" placement="right" />
        <Separator />
        <CommandButton id="tool.hood" icon="hood" placement="right" />
        <CommandButton id="tool.draw" icon="draw" placement="right" />
        <CommandButton id="tool.cap" icon="cap" placement="right" />
        <CommandButton id="tool.insert" icon="insert" placement="right" />
        <ToolGroup
          name={says.groups.run}
          tools={[
            { id: 'part', icon: 'part' },
            { id: 'split', icon: 'split' },
            { id: 'join', icon: 'join' },
          ]}
        />
        <Separator />
        <ToolGroup
          name={says.groups.room}
          tools={[
            { id: 'block', icon: 'block' },
            { id: 'exit', icon: 'exit' },
          ]}
        />
        <ToolGroup
          name={says.groups.notes}
          tools={[
            { id: 'dimension', icon: 'dimension' },
            { id: 'note', icon: 'pin' },
            { id: 'measure', icon: 'measure' },
          ]}
        />
        <Separator />
        <CommandButton id="edit.delete" icon="remove" placement="right" />
        <CommandButton id="view.fit" icon="fit" placement="right" />
        <UnderlayButton />
      </Toolbar>
    </aside>
  );
}

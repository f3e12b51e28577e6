import {
  Button,
  Header,
  Keyboard,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Separator,
} from 'react-aria-components';
import { words } from '../words/index.ts';
import { type Command, commandById } from './commands.ts';
import { useApp, useBoard, useFiles, useJobs } from './context.ts';
import { onMac } from './controls.tsx';
import { Icon } from './icons.tsx';
import { printed } from './shortcut.ts';

const says = words.shell.topBar;

/** What the menu lists, in groups; the jobs that were changed last stand after the first. */
const groups = [
  ['file.new', 'file.template', 'file.open', 'file.jobs'],
  ['file.save', 'file.saveAs', 'file.versions', 'file.saveTemplate'],
  ['file.print', 'file.jobSheet', 'file.drawing', 'file.share'],
  ['file.underlay', 'file.example', 'view.lab', 'view.lessons'],
  ['view.guide', 'view.help'],
].map((ids) => ids.map(commandById));

/** Jobs that the menu offers to go back to. */
const mostRecent = 4;

/** Recent jobs have ids of their own among those of the commands. */
const recentPrefix = 'recent:';

/** The menu of the job as a whole. */
export function FileMenu() {
  const app = useApp();
  const name = useFiles((state) => state.name);
  const here = useFiles((state) => state.id);
  const cards = useJobs((state) => state.cards);
  const recent = (cards ?? [])
    .filter(({ id, deletedAt, fresh }) => id !== here && deletedAt === null && !fresh)
    .slice(0, mostRecent);
  const [first = [], ...others] = groups;
  const act = (key: string) => {
    if (key.startsWith(recentPrefix)) void app.files.bring(key.slice(recentPrefix.length));
    else commandById(key).run(app);
  };
  return (
    <MenuTrigger onOpenChange={(open) => open && void app.jobs.load()}>
      <Button className="menu-button">
        {says.file}
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <Menu className="menu" aria-label={says.file} onAction={(key) => act(String(key))}>
          <MenuSection>
            <Header>{name ?? says.notSaved}</Header>
            {first.map((command) => (
              <CommandItem key={command.id} command={command} />
            ))}
          </MenuSection>
          {recent.length > 0 && <Separator />}
          {recent.length > 0 && (
            <MenuSection>
              <Header>{words.jobs.commands.recent}</Header>
              {recent.map(({ id, title }) => (
                <MenuItem key={id} id={recentPrefix + id} textValue={title} className="recent-job">
                  {title.trim() === '' ? words.jobs.untitled : title}
                </MenuItem>
              ))}
            </MenuSection>
          )}
          {others.flatMap((group) => [
            <Separator key={`before ${group[0]?.id}`} />,
            ...group.map((command) => <CommandItem key={command.id} command={command} />),
          ])}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

function CommandItem({ command }: { command: Command }) {
  const shortcut = command.shortcuts[0];
  const title = useBoard(command.title);
  return (
    <MenuItem id={command.id} textValue={title}>
      <span>{title}</span>
      {shortcut && <Keyboard>{printed(shortcut, onMac)}</Keyboard>}
    </MenuItem>
  );
}

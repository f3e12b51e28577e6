import {
  Button,
  Header,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Separator,
} from 'react-aria-components';
import type { CsvStyle } from '../../files/csv/csv.ts';
import { words } from '../../words/index.ts';
import { commandById } from '../commands.ts';
import { useApp, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import { tableNames, usualStyle } from './commands.ts';

const says = words.partsList.tables;

/** Tables for spreadsheets, and how numbers are written in them. */
export function SaveMenu() {
  const app = useApp();
  const style = useUi((state) => state.csvStyle) ?? usualStyle();
  return (
    <MenuTrigger>
      <Button className="button">
        {words.partsList.dock.save} <Icon name="down" size={14} />
      </Button>
      <Popover className="popover" placement="top start">
        <Menu className="menu" aria-label={words.partsList.dock.save}>
          {tableNames.map((name) => (
            <MenuItem key={name} id={name} onAction={() => commandById(`file.table-${name}`).run(app)}>
              {says[name].short}
            </MenuItem>
          ))}
          <Separator />
          <MenuSection
            selectionMode="single"
            disallowEmptySelection
            selectedKeys={[style]}
            onSelectionChange={(keys) => {
              const [next] = [...keys];
              app.ui.setState({ csvStyle: next as CsvStyle });
            }}
          >
            <Header>{says.numbers}</Header>
            <MenuItem id="point">{says.point}</MenuItem>
            <MenuItem id="comma">{says.comma}</MenuItem>
          </MenuSection>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

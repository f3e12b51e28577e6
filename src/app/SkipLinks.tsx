import { Button } from 'react-aria-components';
import { words } from '../words/index.ts';
import { useApp } from './context.ts';

const { skip } = words.shell;

/** The first stops of the Tab key: past the bar and the tools to where the work is. */
export function SkipLinks() {
  const { ui } = useApp();
  return (
    <nav className="skip-links" aria-label={skip.heading}>
      <Button className="button" onPress={() => focusOn('[data-sheet]')}>
        {skip.sheets}
      </Button>
      <Button
        className="button"
        onPress={() => {
          ui.setState({ table: true });
          focusOn('.route-table [data-at]');
        }}
      >
        {skip.table}
      </Button>
      <Button className="button" onPress={() => focusOn('.strip button')}>
        {skip.results}
      </Button>
    </nav>
  );
}

function focusOn(selector: string): void {
  document.querySelector<HTMLElement>(selector)?.focus();
}

import { Button } from 'react-aria-components';
import { useApp } from './context.ts';

/** The first stops of the Tab key: past the bar and the tools to where the work is. */
export function SkipLinks() {
  const { ui } = useApp();
  return (
    <nav className="skip-links" aria-label="Skip to">
      <Button className="button" onPress={() => focusOn('[data-sheet]')}>
        Skip to the sheets
      </Button>
      <Button
        className="button"
        onPress={() => {
          ui.setState({ table: true });
          focusOn('.route-table [data-at]');
        }}
      >
        Route table
      </Button>
      <Button className="button" onPress={() => focusOn('.strip button')}>
        Skip to the results
      </Button>
    </nav>
  );
}

function focusOn(selector: string): void {
  document.querySelector<HTMLElement>(selector)?.focus();
}

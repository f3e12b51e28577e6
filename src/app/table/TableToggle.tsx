import { ToggleButton } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useUi } from '../context.ts';

/** Opens the route table under the sheets, and closes it. */
export function TableToggle() {
  const { ui } = useApp();
  const open = useUi((state) => state.table);
  return (
    <div className="switch arrangement-switch">
      <ToggleButton
        aria-label={words.table.grid.heading}
        isSelected={open}
        onChange={(table) => ui.setState({ table })}
      >
        <svg width="18" height="12" viewBox="0 0 18 12" fill="none" stroke="currentColor" aria-hidden="true">
          <path d="M1 1h16v10H1zM1 4.5h16M1 7.8h16M6 4.5V11" />
        </svg>
      </ToggleButton>
    </div>
  );
}

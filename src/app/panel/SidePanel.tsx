import { useEffect, useRef } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { single } from '../../canvas/selection.ts';
import { words } from '../../words/index.ts';
import { useAdvice, useApp, useBoard, useUi } from '../context.ts';
import { KitchenTab } from '../kitchen/KitchenTab.tsx';
import type { PanelTab } from '../ui.ts';
import { Findings } from './Findings.tsx';
import { Pressure } from './Pressure.tsx';
import { Proposals } from './Proposals.tsx';
import { Selected } from './Selected.tsx';

const says = words.panels.tabs;

/** What would make the route better, where the pressure goes, what is selected, what is wrong. */
export function SidePanel() {
  const { ui } = useApp();
  const tab = useUi((state) => state.panel);
  const findings = useBoard((state) => state.solution.findings.length);
  const advice = useAdvice();
  useFollowSelection();
  return (
    <aside className="side-panel" aria-label={says.label}>
      <Tabs
        className="tabs"
        selectedKey={tab}
        onSelectionChange={(key) => ui.setState({ panel: key as PanelTab })}
      >
        <TabList className="tab-list" aria-label={says.label}>
          <Tab id="proposals">
            {says.proposals}
            <Badge count={advice.proposals.length} />
          </Tab>
          <Tab id="pressure">{says.pressure}</Tab>
          <Tab id="selected">{says.selected}</Tab>
          <Tab id="findings">
            {says.findings}
            <Badge count={findings} />
          </Tab>
          <Tab id="kitchen">{says.kitchen}</Tab>
        </TabList>
        <TabPanel id="proposals" className="tab-panel">
          <Proposals />
        </TabPanel>
        <TabPanel id="pressure" className="tab-panel">
          <Pressure />
        </TabPanel>
        <TabPanel id="selected" className="tab-panel">
          <Selected />
        </TabPanel>
        <TabPanel id="findings" className="tab-panel">
          <Findings />
        </TabPanel>
        <TabPanel id="kitchen" className="tab-panel">
          <KitchenTab />
        </TabPanel>
      </Tabs>
    </aside>
  );
}

function Badge({ count }: { count: number }) {
  return count > 0 ? <span className="badge">{count}</span> : null;
}

/**
 * Picking one thing on a sheet opens what is known about it, in the place of the proposals. What a
 * tool has just made and selected does not: the proposals are what the next look is for.
 */
function useFollowSelection() {
  const { ui } = useApp();
  const selection = useBoard((state) => state.selection);
  const job = useBoard((state) => state.job);
  const before = useRef({ selection, job });
  useEffect(() => {
    const picked = selection !== before.current.selection && job === before.current.job;
    before.current = { selection, job };
    const one = single(selection) !== undefined;
    if (picked && one && ui.getState().panel === 'proposals') ui.setState({ panel: 'selected' });
  }, [selection, job, ui]);
}

import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Finding, Severity } from '../../graph/route.ts';
import { Codes } from '../codes/Codes.tsx';
import { useApp, useBoard, useUi } from '../context.ts';
import { Icon, type IconName } from '../icons.tsx';
import { capitalized, counted } from '../wording.ts';
import { PlacedRow } from './PlacedRow.tsx';

const order: readonly Severity[] = ['danger', 'error', 'warning', 'note'];
const pictures: Record<Severity, IconName> = {
  danger: 'danger',
  error: 'danger',
  warning: 'caution',
  note: 'note',
};

/** What is wrong or worth knowing, the worst first; pressing one goes to its place. */
export function Findings() {
  const { ui } = useApp();
  const view = useUi((state) => state.findingsView);
  return (
    <>
      <ToggleButtonGroup
        className="switch findings-switch"
        aria-label="What is listed"
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[view]}
        onSelectionChange={(keys) => ui.setState({ findingsView: keys.has('codes') ? 'codes' : 'findings' })}
      >
        <ToggleButton id="findings">On the drawing</ToggleButton>
        <ToggleButton id="codes">Codes and practice</ToggleButton>
      </ToggleButtonGroup>
      {view === 'codes' ? <Codes /> : <FindingList />}
    </>
  );
}

function FindingList() {
  const findings = useBoard((state) => state.solution.findings);
  if (findings.length === 0)
    return (
      <div className="empty-state">
        <h2>No findings</h2>
        <p>
          Gaps, crossings without a joint, bends that do not fit their legs and ducts that end in the open
          would be listed here. An empty list is not an approval: local code and the hood's instructions
          decide.
        </p>
      </div>
    );
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  return (
    <>
      <p className="lead">{counted(findings.length, 'finding')}. Press one to go to its place.</p>
      <ul className="finding-list">
        {sorted.map((finding) => (
          <Row key={finding.id} finding={finding} />
        ))}
      </ul>
    </>
  );
}

function Row({ finding }: { finding: Finding }) {
  const place = { nodes: finding.nodes, segments: finding.segments };
  return (
    <li>
      <PlacedRow place={place} className={`finding ${finding.severity}`}>
        <Icon name={pictures[finding.severity]} size={18} />
        <span className="finding-text">
          <strong>{capitalized(finding.severity)}.</strong> {finding.message}
          {finding.remedy && <span className="remedy">{finding.remedy}</span>}
          {finding.source && <span className="source">{finding.source}</span>}
        </span>
      </PlacedRow>
    </li>
  );
}

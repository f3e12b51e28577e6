import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Finding, Severity } from '../../graph/route.ts';
import { words } from '../../words/index.ts';
import { Codes } from '../codes/Codes.tsx';
import { useApp, useBoard, useUi } from '../context.ts';
import { Icon, type IconName } from '../icons.tsx';
import { capitalized } from '../wording.ts';
import { PlacedRow } from './PlacedRow.tsx';

const says = words.panels.findings;

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
        aria-label={says.label}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[view]}
        onSelectionChange={(keys) => ui.setState({ findingsView: keys.has('codes') ? 'codes' : 'findings' })}
      >
        <ToggleButton id="findings">{says.onDrawing}</ToggleButton>
        <ToggleButton id="codes">{says.codes}</ToggleButton>
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
        <h2>{says.none}</h2>
        <p>{says.noneHint}</p>
      </div>
    );
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  return (
    <>
      <p className="lead">{says.lead(words.counts.findings(findings.length))}</p>
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
          <strong>{capitalized(words.panels.severities[finding.severity])}.</strong> {finding.message}
          {finding.remedy && <span className="remedy">{finding.remedy}</span>}
          {finding.source && <span className="source">{finding.source}</span>}
        </span>
      </PlacedRow>
    </li>
  );
}

import './codes.css';
import { Button } from 'react-aria-components';
import { checkCodes } from '../../advice/codes/check.ts';
import type { CodeResult, CodeState } from '../../advice/codes/types.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { rules } from '../../graph/rules.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Icon, type IconName } from '../icons.tsx';
import { Marked } from '../Marked.tsx';
import { PlacedRow } from '../panel/PlacedRow.tsx';
import { CapSurroundings } from './CapSurroundings.tsx';

const says = words.codes.results;

const groups: readonly { readonly state: CodeState; readonly title: string; readonly icon: IconName }[] = [
  { state: 'fails', title: says.groups.fails, icon: 'danger' },
  { state: 'cannot tell', title: says.groups.open, icon: 'caution' },
  { state: 'meets', title: says.groups.meets, icon: 'tick' },
  { state: 'not applicable', title: says.groups.notApplicable, icon: 'note' },
];

/** The scheme against codes and practice: each rule with its limit, its source and its place on the sheets. */
export function Codes() {
  const { ui } = useApp();
  const job = useBoard((state) => state.live);
  const solution = useBoard((state) => state.solution);
  const results = checkCodes(job, solution);
  const count = (state: CodeState) => results.filter((one) => one.state === state).length;
  const off = rules.length - results.length;
  return (
    <>
      <p className="lead">
        <Marked
          text={
            off > 0
              ? says.leadWithOff(count('fails'), count('cannot tell'), count('meets'), off)
              : says.lead(count('fails'), count('cannot tell'), count('meets'))
          }
        />
      </p>
      <Button className="button" onPress={() => ui.setState({ rules: true })}>
        {says.rules}
      </Button>
      {groups.map(({ state, title, icon }) => {
        const some = results.filter((one) => one.state === state);
        if (some.length === 0) return null;
        return (
          <section key={state} aria-label={title}>
            <h3 className="code-group">
              {title} <small>{some.length}</small>
            </h3>
            <ul className="finding-list">
              {state === 'not applicable'
                ? alike(some).map(([reason, names]) => (
                    <li key={reason} className="finding code">
                      <Icon name={icon} size={18} />
                      <span className="finding-text">
                        {reason} <span className="source">{names.join(', ')}</span>
                      </span>
                    </li>
                  ))
                : some.map((result) => <Row key={result.rule} result={result} icon={icon} />)}
            </ul>
            {state === 'cannot tell' && <CapSurroundings />}
          </section>
        );
      })}
      {count('cannot tell') === 0 && <CapSurroundings />}
    </>
  );
}

/** The names of rules under the reason that they share, in the order of the rules. */
function alike(results: readonly CodeResult[]): [reason: string, names: string[]][] {
  const byReason = new Map<string, string[]>();
  for (const { message, name } of results) byReason.set(message, [...(byReason.get(message) ?? []), name]);
  return [...byReason];
}

function Row({ result, icon }: { result: CodeResult; icon: IconName }) {
  const place = { nodes: result.nodes, segments: result.segments };
  const figures = [
    result.measured && says.found(result.measured),
    result.limit && (result.overridden ? says.ownLimit(result.limit) : says.limit(result.limit)),
  ].filter(Boolean);
  return (
    <li>
      <PlacedRow place={place} className={`finding code ${result.state === 'fails' ? 'warning' : ''}`}>
        <Icon name={icon} size={18} />
        <span className="finding-text">
          <strong>{result.name}.</strong> {result.message}
          {figures.length > 0 && <span className="source">{figures.join('. ')}</span>}
          {result.state !== 'meets' && <span className="remedy">{result.remedy}</span>}
          <span className="source">
            {says.source(result.source, sourceWords[result.sourceKind], result.edition)}
          </span>
        </span>
      </PlacedRow>
    </li>
  );
}

import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { type AirflowRule, requiredAirflow } from '../../advice/required.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Explained } from '../explain/Explained.tsx';
import { Icon } from '../icons.tsx';
import { capitalized } from '../wording.ts';
import { Overruling } from './Overruling.tsx';

const says = words.kitchen.required;

/** How much air the cooktop asks for, by every rule that applies, and what the chosen speed gives. */
export function RequiredAir() {
  const units = useBoard((state) => state.units);
  const kitchen = useBoard((state) => state.live.kitchen);
  const index = useBoard((state) => state.speed);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const { rules, governing, overruled } = requiredAirflow(kitchen);
  const flow = speed?.outcome.solved ? speed.outcome.flow : null;
  const ordered = [...rules].sort((a, b) => b.flow - a.flow);
  const short = flow === null ? 0 : governing.flow - flow;
  return (
    <section className="details" aria-label={says.label}>
      <h2>
        {says.needs}{' '}
        <Explained refTo={{ figure: 'required airflow', speed: index }}>
          {formatFlow(governing.flow, units)}
        </Explained>{' '}
        <small className="by-rule">{governing.name}</small>
      </h2>
      {flow !== null && speed && (
        <p className={short > 0 ? 'verdict short' : 'verdict'}>
          {says.delivers(
            capitalized(speed.name),
            formatFlow(flow, units),
            short > 0 ? says.short(formatFlow(short, units)) : says.enough(formatFlow(-short, units)),
          )}
        </p>
      )}
      <ul className="rules">
        {ordered.map((rule) => (
          <li key={rule.id} className="rule" data-governs={rule === governing || undefined}>
            <span>{rule.name}</span>
            <span className="rule-flow">{formatFlow(rule.flow, units)}</span>
          </li>
        ))}
      </ul>
      <Overruling governing={governing} overruled={overruled} />
      <Reasons rules={ordered} />
      <MakeUpTrigger />
    </section>
  );
}

/** What each rule says, and who says it. */
function Reasons({ rules }: { rules: readonly AirflowRule[] }) {
  return (
    <Disclosure className="source-note">
      <Heading>
        <Button slot="trigger">
          <Icon name="down" size={14} />
          {says.sources}
        </Button>
      </Heading>
      <DisclosurePanel>
        <ul>
          {rules.map((rule) => (
            <li key={rule.id}>
              {rule.name}: {rule.because} {rule.source} ({sourceWords[rule.sourceKind]}).
            </li>
          ))}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

/** Says when the hood can move so much that codes ask for make-up air. */
function MakeUpTrigger() {
  const units = useBoard((state) => state.units);
  const top = useBoard((state) => Math.max(0, ...state.solution.speeds.map((speed) => speed.ratedFlow)));
  const trigger = findLimit('make-up-trigger');
  if (!trigger || typeof trigger.value !== 'number' || top <= trigger.value) return null;
  return (
    <p className="caution">
      {says.makeUp(
        formatFlow(top, units),
        formatFlow(trigger.value, units),
        trigger.source,
        sourceWords[trigger.sourceKind],
      )}
    </p>
  );
}

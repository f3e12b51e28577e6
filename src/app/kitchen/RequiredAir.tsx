import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { type AirflowRule, requiredAirflow } from '../../advice/required.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatFlow } from '../../units/index.ts';
import { useBoard } from '../context.ts';
import { Explained } from '../explain/Explained.tsx';
import { Icon } from '../icons.tsx';

/** How much air the cooktop asks for, by every rule that applies, and what the chosen speed gives. */
export function RequiredAir() {
  const units = useBoard((state) => state.units);
  const kitchen = useBoard((state) => state.live.kitchen);
  const index = useBoard((state) => state.speed);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const { rules, governing } = requiredAirflow(kitchen);
  const flow = speed?.outcome.solved ? speed.outcome.flow : null;
  const ordered = [...rules].sort((a, b) => b.flow - a.flow);
  const short = flow === null ? 0 : governing.flow - flow;
  return (
    <section className="details" aria-label="Airflow needed">
      <h2>
        Needs{' '}
        <Explained refTo={{ figure: 'required airflow', speed: index }}>
          {formatFlow(governing.flow, units)}
        </Explained>{' '}
        <small className="by-rule">{governing.name}</small>
      </h2>
      {flow !== null && speed && (
        <p className={short > 0 ? 'verdict short' : 'verdict'}>
          {speed.name[0]?.toUpperCase()}
          {speed.name.slice(1)} delivers {formatFlow(flow, units)}:{' '}
          {short > 0
            ? `${formatFlow(short, units)} short.`
            : `enough, with ${formatFlow(-short, units)} to spare.`}
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
          Where these come from
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
      This hood is rated for {formatFlow(top, units)}. Above {formatFlow(trigger.value, units)} the model
      residential code asks for make-up air of about the same rate: {trigger.source} (
      {sourceWords[trigger.sourceKind]}). The adopted code decides.
    </p>
  );
}

import { useState } from 'react';
import { Button, Disclosure, DisclosurePanel, Group, Heading } from 'react-aria-components';
import { alsoMeasured, askedFirst } from '../../advice/faults/first.ts';
import { sameProbe } from '../../advice/faults/next.ts';
import type { Measurement, Probe } from '../../advice/faults/types.ts';
import { probeWords } from '../../advice/faults/words.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { capitalized } from '../wording.ts';
import { measuredText, readMeasured } from './reading.ts';

const says = words.faults.measured;

const how = [
  [says.hoodAir, says.hoodAirHow],
  [says.capAir, says.capAirHow],
  [says.collarStatic, says.collarStaticHow],
  [says.capStatic, says.capStaticHow],
  [says.soundAtHead, says.soundHow],
] as const;

interface Props {
  readonly measured: readonly Measurement[];
  readonly take: (one: Measurement) => void;
  readonly drop: (one: Measurement) => void;
}

/** What is entered at one speed, the air beside the air and the pressure beside the pressure. */
function fieldsAt(solution: SchemeSolution, speed: number) {
  const all = [...askedFirst(solution, speed), ...alsoMeasured(speed)];
  return fields.flatMap(([kind, label]) => {
    const probe = all.find((each) => each.kind === kind);
    return probe ? [{ probe, label }] : [];
  });
}

const fields = [
  ['hood air', says.hoodAir],
  ['cap air', says.capAir],
  ['collar static', says.collarStatic],
  ['duct static', says.capStatic],
  ['sound', says.sound],
] as const;

const bySpeed = (a: Probe, b: Probe) => b.speed - a.speed;

/** What was measured at one speed after another, and further measurements that were asked for. */
export function MeasuredFields({ measured, take, drop }: Props) {
  const { board } = useApp();
  const solution = useBoard((state) => state.solution);
  const { speeds } = solution;
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const units = useBoard((state) => state.units);
  const [chosen, setChosen] = useState(speeds.length - 1);
  const speed = Math.min(chosen, speeds.length - 1);
  const name = (index: number) => speeds[index]?.name ?? '';
  const probes = fieldsAt(solution, speed);
  const named = (one: Measurement) => {
    const field = fieldsAt(solution, one.speed).find(({ probe }) => sameProbe(probe, one));
    return field
      ? says.atSpeed(field.label, name(one.speed))
      : capitalized(probeWords(job, schemeId, one, name(one.speed)));
  };
  return (
    <>
      <h3>{says.heading}</h3>
      <Choice
        label={says.speed}
        choices={speeds.map((each, i) => ({ id: String(i), name: each.name }))}
        value={String(speed)}
        onChoose={(id) => {
          setChosen(Number(id));
          board.set({ speed: Number(id) });
        }}
      />
      <Group className="field-grid" aria-label={says.at(name(speed))}>
        {probes.map(({ probe, label }) => {
          const known = measured.find((one) => sameProbe(one, probe));
          return (
            <QuantityField
              key={label}
              label={label}
              value={known ? measuredText(probe.kind, known.value, units) : ''}
              parse={(text) => readMeasured(probe.kind, text, units)}
              onCommit={(value) => take({ ...probe, value })}
              onClear={() => known && drop(known)}
            />
          );
        })}
      </Group>
      <p className="hint">{says.bestFirst}</p>
      {measured.length > 0 && (
        <ul className="measured-list" aria-label={says.list}>
          {[...measured].sort(bySpeed).map((one) => (
            <li key={`${one.kind}/${one.speed}/${one.node ?? ''}/${one.condition}`}>
              <span>{named(one)}</span>
              <strong>{measuredText(one.kind, one.value, units)}</strong>
              <IconButton
                icon="remove"
                label={says.takeOut(probeWords(job, schemeId, one, name(one.speed)))}
                placement="left"
                onPress={() => drop(one)}
              />
            </li>
          ))}
        </ul>
      )}
      <Disclosure className="source-note">
        <Heading>
          <Button slot="trigger">
            <Icon name="down" size={14} />
            {says.how}
          </Button>
        </Heading>
        <DisclosurePanel>
          <ul className="how">
            {how.map(([what, with_]) => (
              <li key={what}>
                <strong>{what}:</strong> {with_}
              </li>
            ))}
          </ul>
          <p>{says.precision}</p>
          {measured.some(({ kind }) => kind === 'sound') && <p>{says.precisionOfSound}</p>}
        </DisclosurePanel>
      </Disclosure>
    </>
  );
}

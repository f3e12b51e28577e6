import { useState } from 'react';
import { Button, Disclosure, DisclosurePanel, Group, Heading } from 'react-aria-components';
import type { MeasuredKind, Measurement, Probe } from '../../advice/faults/types.ts';
import { probeWords } from '../../advice/faults/words.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { capitalized } from '../wording.ts';
import { measuredText, readMeasured } from './reading.ts';

const says = words.faults.measured;

const first: readonly { readonly kind: MeasuredKind; readonly label: string }[] = [
  { kind: 'hood air', label: says.hoodAir },
  { kind: 'cap air', label: says.capAir },
  { kind: 'collar static', label: says.collarStatic },
  { kind: 'sound', label: says.sound },
];

const how = [
  [says.hoodAir, says.hoodAirHow],
  [says.capAir, says.capAirHow],
  [says.collarStatic, says.collarStaticHow],
  [says.soundAtHead, says.soundHow],
] as const;

interface Props {
  readonly measured: readonly Measurement[];
  readonly take: (one: Measurement) => void;
  readonly drop: (one: Measurement) => void;
}

/** What was measured at one speed after another, and further measurements that were asked for. */
export function MeasuredFields({ measured, take, drop }: Props) {
  const { board } = useApp();
  const speeds = useBoard((state) => state.solution.speeds);
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const units = useBoard((state) => state.units);
  const [chosen, setChosen] = useState(speeds.length - 1);
  const speed = Math.min(chosen, speeds.length - 1);
  const further = measured.filter(
    (one) => one.condition !== 'as used' || !first.some(({ kind }) => kind === one.kind),
  );
  const name = (index: number) => speeds[index]?.name ?? '';
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
        {first.map(({ kind, label }) => {
          const probe: Probe = { kind, speed, condition: 'as used' };
          const known = measured.find(
            (one) => one.kind === kind && one.speed === speed && one.condition === 'as used',
          );
          return (
            <QuantityField
              key={kind}
              label={label}
              value={known ? measuredText(kind, known.value, units) : ''}
              parse={(text) => readMeasured(kind, text, units)}
              onCommit={(value) => take({ ...probe, value })}
            />
          );
        })}
      </Group>
      {measured.length > 0 && (
        <ul className="measured-list" aria-label={says.list}>
          {measured.map((one) => (
            <li key={`${one.kind}/${one.speed}/${one.node ?? ''}/${one.condition}`}>
              <span>
                {capitalized(probeWords(job, schemeId, one, name(one.speed)))}
                {': '}
                <strong>{measuredText(one.kind, one.value, units)}</strong>
              </span>
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
          <p>{further.length > 0 ? says.precisionWithSound : says.precision}</p>
        </DisclosurePanel>
      </Disclosure>
    </>
  );
}

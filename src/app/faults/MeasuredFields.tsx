import { useState } from 'react';
import { Group } from 'react-aria-components';
import type { MeasuredKind, Measurement, Probe } from '../../advice/faults/types.ts';
import { probeWords } from '../../advice/faults/words.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { capitalized } from '../wording.ts';
import { measuredText, readMeasured } from './reading.ts';

const first: readonly { readonly kind: MeasuredKind; readonly label: string }[] = [
  { kind: 'hood air', label: 'Air at the hood' },
  { kind: 'cap air', label: 'Air at the cap' },
  { kind: 'collar static', label: 'Static at the collar' },
  { kind: 'sound', label: 'Sound at the cook' },
];

const how = [
  [
    'Air at the hood',
    'a flow hood, or a vane anemometer moved evenly over the whole filter, times the free area.',
  ],
  [
    'Air at the cap',
    'a powered flow hood or a rotating-vane anemometer over the opening, from a safe stand.',
  ],
  [
    'Static at the collar',
    'a manometer with its tube in a small hole in the duct a hand above the collar, square to the air, its other side open to the kitchen; close the hole with metal tape afterwards.',
  ],
  ["Sound at the cook's head", 'a sound level meter set to A, slow, where the cook stands.'],
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
      <h3>What was measured</h3>
      <Choice
        label="At speed"
        choices={speeds.map((each, i) => ({ id: String(i), name: each.name }))}
        value={String(speed)}
        onChoose={(id) => {
          setChosen(Number(id));
          board.set({ speed: Number(id) });
        }}
      />
      <Group className="field-grid" aria-label={`Measured at ${name(speed)}`}>
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
        <ul className="measured-list" aria-label="Measurements">
          {measured.map((one) => (
            <li key={`${one.kind}/${one.speed}/${one.node ?? ''}/${one.condition}`}>
              <span>
                {capitalized(probeWords(job, schemeId, one, name(one.speed)))}
                {': '}
                <strong>{measuredText(one.kind, one.value, units)}</strong>
              </span>
              <IconButton
                icon="remove"
                label={`Take out ${probeWords(job, schemeId, one, name(one.speed))}`}
                placement="left"
                onPress={() => drop(one)}
              />
            </li>
          ))}
        </ul>
      )}
      <details className="how">
        <summary>What to measure with</summary>
        <ul>
          {how.map(([what, with_]) => (
            <li key={what}>
              <strong>{what}:</strong> {with_}
            </li>
          ))}
        </ul>
        <p>
          One speed tells little: two or more, and both air and pressure, tell causes apart. Each value is
          taken to be good to 5 % (common practice{further.length > 0 ? '; sound to 5 dB' : ''}).
        </p>
      </details>
    </>
  );
}

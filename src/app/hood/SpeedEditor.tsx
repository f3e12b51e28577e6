import type { Draft } from 'immer';
import type { FanSpeed, Hood } from '../../graph/document.ts';
import {
  type FanDataKind,
  fanDataAs,
  fanDataKind,
  removeSpeed,
  renameSpeed,
  setFanData,
} from '../../graph/edits/index.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { formatFlow, parseFlow, parseQuantity, quantity } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { NameField } from '../kitchen/NameField.tsx';
import { above, within } from '../kitchen/reading.ts';
import { FanDataFields } from './FanDataFields.tsx';
import { alsoSones, readSound, soundText } from './sound.ts';

const kinds: readonly { id: FanDataKind; name: string; what: string }[] = [
  {
    id: 'curve',
    name: 'Full curve',
    what: 'Pressure at several flows, from the data sheet. The best there is.',
  },
  {
    id: 'certified',
    name: 'Two certified points',
    what: 'Two flows, each at a pressure, from a certified label.',
  },
  {
    id: 'freeAir',
    name: 'Free air and shut-off',
    what: 'The flow against no pressure, and the pressure at no flow.',
  },
  { id: 'single', name: 'One number', what: 'An advertised flow; the pressure behind it is assumed.' },
  {
    id: 'scaledFrom',
    name: 'Fan law from another speed',
    what: 'The same fan turning faster or slower than at a speed that is known.',
  },
];

const bases = [
  { id: 'static', name: 'Static pressure' },
  { id: 'total', name: 'Total pressure' },
] as const;

const basisSentences = {
  static:
    'What a standard airflow test reports: total pressure less the velocity pressure in the collar, which is given back before the run is charged.',
  total: 'Velocity pressure is already in the figures: nothing is added to them.',
} as const;

/** One speed of a hood: its name, how its fan is known, and what its label says. */
export function SpeedEditor({ hood, index }: { hood: Hood; index: number }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const speed = hood.speeds[index];
  if (!speed) return null;
  const known = speedCurve(hood, index);
  const kind = fanDataKind(speed) ?? null;
  const possible = kinds.filter(({ id }) => id === kind || fanDataAs(hood, index, id) !== undefined);
  const change = (label: string, recipe: (speed: Draft<FanSpeed>) => void) =>
    board.dispatch(label, (job) => {
      const draft = job.hoods.find((each) => each.id === hood.id)?.speeds[index];
      if (draft) recipe(draft);
    });
  const density = (value: number) => quantity('density', value, units).text;
  return (
    <div className="speed-editor">
      <div className="name-row">
        <NameField
          label="Name of this speed"
          value={speed.name}
          refuse={(name) =>
            hood.speeds.some((other, i) => i !== index && other.name === name)
              ? 'Another speed has this name.'
              : undefined
          }
          onCommit={(name) =>
            board.dispatch('rename speed', (job) => {
              renameSpeed(job, hood.id, index, name);
            })
          }
        />
        <IconButton
          icon="remove"
          label={`Take out speed ${speed.name}`}
          placement="left"
          isDisabled={hood.speeds.length < 2}
          onPress={() =>
            board.dispatch('take out speed', (job) => {
              removeSpeed(job, hood.id, index);
            })
          }
        />
      </div>
      <Choice
        label="How the fan is known"
        choices={possible}
        value={kind}
        onChoose={(chosen) => {
          const data = fanDataAs(hood, index, chosen);
          if (data) board.dispatch('change fan data', (job) => setFanData(job, hood.id, index, data));
        }}
      />
      <FanDataFields hood={hood} index={index} />
      {known.known ? (
        known.assumptions.map((assumption) => (
          <p key={assumption} className="assumed">
            <Icon name="caution" size={16} />
            <span>
              <strong>Assumed.</strong> {assumption}
            </span>
          </p>
        ))
      ) : (
        <p className="caution">{known.reason}</p>
      )}
      <Choice
        label="Pressures are"
        choices={bases}
        value={speed.pressureBasis}
        onChoose={(basis) =>
          change('change pressure basis', (draft) => {
            draft.pressureBasis = basis;
          })
        }
      />
      <p className="hint">{basisSentences[speed.pressureBasis]}</p>
      <div className="field-grid">
        <QuantityField
          label="Rated flow, by the label"
          value={formatFlow(known.ratedFlow, units)}
          parse={(text) => above(parseFlow(text, units), 'A rated flow is more than 0.')}
          onCommit={(flow) =>
            change('change rated flow', (draft) => {
              draft.ratedFlow = flow;
            })
          }
        />
        <QuantityField
          label="Rated in air of"
          value={density(speed.density)}
          parse={(text) => within(parseQuantity('density', text, units), 0.5, 1.6, 'Air', density)}
          onCommit={(value) =>
            change('change rated density', (draft) => {
              draft.density = value;
            })
          }
        />
        <QuantityField
          label="Rated sound"
          value={speed.sound === undefined ? '' : soundText(speed.sound)}
          parse={readSound}
          description={speed.sound === undefined ? 'dBA or sones, if known.' : alsoSones(speed.sound)}
          onCommit={(sound) =>
            change('change rated sound', (draft) => {
              draft.sound = sound;
            })
          }
        />
      </div>
    </div>
  );
}

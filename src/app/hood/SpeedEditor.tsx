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
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { NameField } from '../kitchen/NameField.tsx';
import { above, within } from '../kitchen/reading.ts';
import { FanDataFields } from './FanDataFields.tsx';
import { alsoSones, readSound, soundText } from './sound.ts';

const says = words.hood.speed;

const kinds: readonly { id: FanDataKind; name: string; what: string }[] = [
  {
    id: 'curve',
    name: says.kinds.curve,
    what: says.kinds.curveMeans,
  },
  {
    id: 'certified',
    name: says.kinds.points,
    what: says.kinds.pointsMean,
  },
  {
    id: 'freeAir',
    name: says.kinds.ends,
    what: says.kinds.endsMean,
  },
  { id: 'single', name: says.kinds.single, what: says.kinds.singleMeans },
  {
    id: 'scaledFrom',
    name: says.kinds.law,
    what: says.kinds.lawMeans,
  },
];

const bases = [
  { id: 'static', name: words.hood.fanData.staticPressure },
  { id: 'total', name: words.hood.fanData.totalPressure },
] as const;

const basisSentences = {
  static: says.staticMeans,
  total: says.totalMeans,
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
          label={says.name}
          value={speed.name}
          refuse={(name) =>
            hood.speeds.some((other, i) => i !== index && other.name === name) ? says.nameTaken : undefined
          }
          onCommit={(name) =>
            board.dispatch(words.edits.hood.renameSpeed, (job) => {
              renameSpeed(job, hood.id, index, name);
            })
          }
        />
        <IconButton
          icon="remove"
          label={says.takeOut(speed.name)}
          placement="left"
          isDisabled={hood.speeds.length < 2}
          onPress={() =>
            board.dispatch(words.edits.hood.takeOutSpeed, (job) => {
              removeSpeed(job, hood.id, index);
            })
          }
        />
      </div>
      <Choice
        label={says.known}
        choices={possible}
        value={kind}
        onChoose={(chosen) => {
          const data = fanDataAs(hood, index, chosen);
          if (data) board.dispatch(words.edits.hood.fanData, (job) => setFanData(job, hood.id, index, data));
        }}
      />
      <FanDataFields hood={hood} index={index} />
      {known.known ? (
        known.assumptions.map((assumption) => (
          <p key={assumption} className="assumed">
            <Icon name="caution" size={16} />
            <span>
              <strong>{says.assumed}</strong> {assumption}
            </span>
          </p>
        ))
      ) : (
        <p className="caution">{known.reason}</p>
      )}
      <Choice
        label={says.basis}
        choices={bases}
        value={speed.pressureBasis}
        onChoose={(basis) =>
          change(words.edits.hood.basis, (draft) => {
            draft.pressureBasis = basis;
          })
        }
      />
      <p className="hint">{basisSentences[speed.pressureBasis]}</p>
      <div className="field-grid">
        <QuantityField
          label={says.rated}
          value={formatFlow(known.ratedFlow, units)}
          parse={(text) => above(parseFlow(text, units), says.ratedRefused)}
          onCommit={(flow) =>
            change(words.edits.hood.ratedFlow, (draft) => {
              draft.ratedFlow = flow;
            })
          }
        />
        <QuantityField
          label={says.density}
          value={density(speed.density)}
          parse={(text) =>
            within(parseQuantity('density', text, units), 0.5, 1.6, says.densityRange, density)
          }
          onCommit={(value) =>
            change(words.edits.hood.density, (draft) => {
              draft.density = value;
            })
          }
        />
        <QuantityField
          label={says.sound}
          value={speed.sound === undefined ? '' : soundText(speed.sound)}
          parse={readSound}
          description={speed.sound === undefined ? says.soundHint : alsoSones(speed.sound)}
          onCommit={(sound) =>
            change(words.edits.hood.sound, (draft) => {
              draft.sound = sound;
            })
          }
        />
      </div>
    </div>
  );
}

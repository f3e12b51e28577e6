import type { Draft } from 'immer';
import { useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Hood } from '../../graph/document.ts';
import { addSpeed } from '../../graph/edits/index.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { NameField } from '../kitchen/NameField.tsx';
import { within } from '../kitchen/reading.ts';
import { SectionChooser } from '../panel/choosers.tsx';
import { FanChart } from '../panel/FanChart.tsx';
import { Terms } from '../term/Terms.tsx';
import { SpeedEditor } from './SpeedEditor.tsx';

const says = words.hood.editor;

/** A hood: its measures, its collar, and what is known of its fan at every speed. */
export function HoodEditor({ id }: { id: string }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const hood = useBoard((state) => state.live.hoods.find((each) => each.id === id));
  const speeds = useBoard((state) => state.solution.speeds);
  const chosen = useBoard((state) => state.solution.speeds[state.speed]);
  // A fan in the run, or a hood that stands nowhere, has no results among which a speed is chosen.
  const [own, setOwn] = useState<number | null>(null);
  if (!hood) return <p className="caution">{says.missing}</p>;
  const top = hood.speeds.length - 1;
  const listed = chosen?.hood === id ? chosen.speed : top;
  const index = Math.min(top, speeds.some((each) => each.hood === id) ? listed : (own ?? top));
  const choose = (speed: number) => {
    const at = speeds.findIndex((each) => each.hood === id && each.speed === speed);
    if (at >= 0) board.set({ speed: at });
    setOwn(speed);
  };
  const change = (label: string, recipe: (hood: Draft<Hood>) => void) =>
    board.dispatch(label, (job) => {
      const draft = job.hoods.find((each) => each.id === id);
      if (draft) recipe(draft);
    });
  return (
    <div className="hood-editor">
      <NameField
        label={says.name}
        value={hood.name}
        onCommit={(name) =>
          change(words.edits.hood.rename, (draft) => {
            draft.name = name;
          })
        }
      />
      <div className="field-grid">
        <QuantityField
          label={says.width}
          value={hood.width === undefined ? '' : formatLength(hood.width, units)}
          parse={(text) =>
            within(parseLength(text, units), 0.15, 4, says.widthRange, (width) => formatLength(width, units))
          }
          onCommit={(width) =>
            change(words.edits.hood.width, (draft) => {
              draft.width = width;
            })
          }
        />
        <SectionChooser
          label={says.collar}
          value={hood.collar}
          onChoose={(collar) =>
            change(words.edits.hood.collar, (draft) => {
              draft.collar = collar;
            })
          }
        />
      </div>
      <h3>{says.fan}</h3>
      <FanChart hood={hood} />
      <Terms of={['collar', 'fanCurve', 'freeDelivery', 'shutOff', 'staticPressure', 'ratedFlow']} />
      <div className="speed-choice">
        <ToggleButtonGroup
          aria-label={says.speed}
          className="switch"
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[String(index)]}
          onSelectionChange={(keys) => {
            const [key] = keys;
            if (key !== undefined) choose(Number(key));
          }}
        >
          {hood.speeds.map((speed, i) => (
            <ToggleButton key={speed.name} id={String(i)}>
              {speed.name}
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
        <IconButton
          icon="add"
          label={says.addSpeed}
          placement="left"
          onPress={() => {
            let made = index;
            board.dispatch(words.edits.hood.addSpeed, (job) => {
              made = addSpeed(job, id);
            });
            const { solution } = board.getState();
            const at = solution.speeds.findIndex((each) => each.hood === id && each.speed === made);
            if (at >= 0) board.set({ speed: at });
            setOwn(made);
          }}
        />
      </div>
      <SpeedEditor key={`${id} ${index}`} hood={hood} index={index} />
    </div>
  );
}

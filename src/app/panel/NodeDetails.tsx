import { Button } from 'react-aria-components';
import type { Node, Vec3 } from '../../graph/document.ts';
import { setBend, setCap, setCapOpening, setNodePosition, setTransition } from '../../graph/edits/index.ts';
import type { RouteBend, RouteNode } from '../../graph/route.ts';
import { sectionWords } from '../../graph/sections.ts';
import { bends, caps, findBend, findCap } from '../../hydraulics/catalogue.ts';
import { area } from '../../hydraulics/section.ts';
import {
  formatAngle,
  formatLength,
  formatTrimmed,
  parseAngle,
  parseArea,
  parseLength,
  parseNumber,
  quantity,
} from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure, QuantityField } from '../controls.tsx';
import { HoodEditor } from '../hood/HoodEditor.tsx';
import { nodeName } from '../places.ts';
import { capitalized } from '../wording.ts';
import { RowChooser } from './choosers.tsx';
import { FittingFigures } from './FittingFigures.tsx';

/** One node: the turn, the cap or the hood that stands there, and its place in the kitchen. */
export function NodeDetails({ id }: { id: string }) {
  const { ui } = useApp();
  const route = useBoard((state) => state.solution.route);
  const node = useBoard((state) =>
    state.live.schemes.find((s) => s.id === state.schemeId)?.nodes.find((n) => n.id === id),
  );
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const place = route.nodes.get(id);
  if (!node || !place) return null;
  const fittings = speed?.outcome.solved ? speed.outcome.fittings.filter((fitting) => fitting.at === id) : [];
  return (
    <section className="details" aria-label="Selected point">
      <h2>{capitalized(nodeName(route, id))}</h2>
      {place.bend && <BendChoice id={id} bend={place.bend} />}
      {place.bend && (
        <Button className="text-button" onPress={() => ui.setState({ lab: { node: id } })}>
          Try it in the bend lab
        </Button>
      )}
      {place.transition && <TransitionChoice node={place} />}
      {place.kind === 'cap' && node.cap !== undefined && (
        <CapChoice id={id} cap={node.cap} opening={node.capOpening} />
      )}
      {place.kind === 'open end' && <OpenEnd id={id} />}
      {node.hood !== undefined && <HoodEditor id={node.hood} />}
      {node.fan !== undefined && <HoodEditor id={node.fan} />}
      {fittings.map((fitting) => (
        <FittingFigures key={fitting.id} fitting={fitting} />
      ))}
      {speed && !speed.outcome.solved && <p className="hint">{speed.outcome.reason}</p>}
      <Place node={node} />
    </section>
  );
}

function BendChoice({ id, bend }: { id: string; bend: RouteBend }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  const shape = useBoard((state) => state.solution.route.segments.get(bend.downstream)?.section.shape);
  const suited = bends.filter(
    (row) =>
      row.section === 'any' || row.id === bend.kind || (row.section === 'round') === (shape === 'round'),
  );
  return (
    <>
      <RowChooser
        label="Bend"
        rows={suited}
        value={bend.kind}
        onChoose={(kind) => board.dispatch('change bend', (job) => setBend(job, schemeId, id, { kind }))}
      />
      {bend.radius > 0 && (
        <QuantityField
          label="Centre-line radius over diameter, r/D"
          value={formatTrimmed(bend.radiusRatio)}
          parse={parseRatio}
          onCommit={(radiusRatio) =>
            board.dispatch('change bend radius', (job) =>
              setBend(job, schemeId, id, { kind: bend.kind, radiusRatio }),
            )
          }
        />
      )}
      {findBend(bend.kind)?.caution && <p className="caution">{findBend(bend.kind)?.caution}</p>}
      <dl className="figures">
        <Figure name="Turn, true in space">{formatAngle(bend.angle)}</Figure>
        {bend.radius > 0 && <Figure name="Centre-line radius">{formatLength(bend.radius, units)}</Figure>}
        {bend.tangent > 0 && <Figure name="Taken from each leg">{formatLength(bend.tangent, units)}</Figure>}
      </dl>
    </>
  );
}

const transitionKinds = [
  { id: 'conical', name: 'Conical', what: 'A cone between the two sections.' },
  { id: 'abrupt', name: 'Abrupt', what: 'One section ends flat against the other.' },
] as const;

function TransitionChoice({ node }: { node: RouteNode }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  const { transition, id } = node;
  if (!transition) return null;
  return (
    <>
      <RowChooser
        label={`Transition, ${sectionWords(transition.from, units)} to ${sectionWords(transition.to, units)}`}
        rows={transitionKinds}
        value={transition.kind}
        onChoose={(kind) =>
          board.dispatch('change transition', (job) =>
            setTransition(job, schemeId, id, { kind: kind === 'abrupt' ? 'abrupt' : 'conical' }),
          )
        }
      />
      {transition.kind === 'conical' && (
        <QuantityField
          label="Full angle of the cone"
          value={formatAngle(transition.angle)}
          parse={(text) => {
            const read = parseAngle(text, units);
            return read.ok && (read.value <= 0 || read.value > 180)
              ? { ok: false, message: 'A cone opens by more than 0° and at most 180° in all.' }
              : read;
          }}
          onCommit={(angle) =>
            board.dispatch('change transition', (job) =>
              setTransition(job, schemeId, id, { kind: 'conical', angle }),
            )
          }
        />
      )}
    </>
  );
}

interface CapChoiceProps {
  readonly id: string;
  readonly cap: string;
  /** Free opening where it differs from the catalogue's, m2. */
  readonly opening: number | undefined;
}

function CapChoice({ id, cap, opening }: CapChoiceProps) {
  const units = useBoard((state) => state.units);
  const arriving = useBoard((state) => {
    const [leg] = state.solution.route.nodes.get(id)?.segments ?? [];
    return leg === undefined ? undefined : state.solution.route.segments.get(leg)?.section;
  });
  const { board } = useApp();
  const schemeId = useBoard((state) => state.schemeId);
  const row = findCap(cap);
  return (
    <>
      <RowChooser
        label="Cap"
        rows={caps}
        value={cap}
        onChoose={(chosen) =>
          board.dispatch('change cap', (job) => {
            setCap(job, schemeId, id, chosen);
          })
        }
      />
      {row && <p className="hint">{row.what}</p>}
      {row?.caution && <p className="caution">{row.caution}</p>}
      {row && arriving && (
        <QuantityField
          label="Free opening"
          value={quantity('area', opening ?? row.openingRatio * area(arriving), units).text}
          parse={(text) => {
            const read = parseArea(text, units);
            return read.ok && read.value <= 0 ? { ok: false, message: 'An opening is more than 0.' } : read;
          }}
          description={
            opening === undefined
              ? 'By the catalogue; type the figure of a data sheet.'
              : 'Typed from a data sheet.'
          }
          onCommit={(value) =>
            board.dispatch('change cap opening', (job) => setCapOpening(job, schemeId, id, value))
          }
        />
      )}
    </>
  );
}

function OpenEnd({ id }: { id: string }) {
  const { board } = useApp();
  const schemeId = useBoard((state) => state.schemeId);
  return (
    <RowChooser
      label="The duct ends open here. Put a cap on it:"
      rows={caps}
      value=""
      onChoose={(chosen) =>
        board.dispatch('place cap', (job) => {
          setCap(job, schemeId, id, chosen);
        })
      }
    />
  );
}

const axes = [
  { name: 'East, x', axis: 0 },
  { name: 'North, y', axis: 1 },
  { name: 'Height, z', axis: 2 },
] as const;

function Place({ node }: { node: Node }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  return (
    <div className="place">
      <h3>Place</h3>
      <div className="place-fields">
        {axes.map(({ name, axis }) => (
          <QuantityField
            key={axis}
            label={name}
            value={formatLength(node.at[axis], units)}
            parse={(text) => parseLength(text, units, { negative: true })}
            onCommit={(value) =>
              board.dispatch('move', (job) => {
                const at: Vec3 = [...node.at];
                at[axis] = value;
                setNodePosition(job, schemeId, node.id, at);
              })
            }
          />
        ))}
      </div>
    </div>
  );
}

function parseRatio(text: string) {
  const read = parseNumber(text);
  if (!read.ok || read.value < 0.5 || read.value > 10)
    return { ok: false, message: 'r/D is a number from 0.5 (tight) to 10.' } as const;
  return read;
}

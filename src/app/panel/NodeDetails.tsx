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
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure, QuantityField } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { HoodEditor } from '../hood/HoodEditor.tsx';
import { nodeName } from '../places.ts';
import { Terms } from '../term/Terms.tsx';
import { capitalized } from '../wording.ts';
import { RowChooser } from './choosers.tsx';
import { FittingFigures } from './FittingFigures.tsx';

const says = words.panels.node;

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
    <section className="details" aria-label={says.label}>
      <h2>{capitalized(nodeName(route, id))}</h2>
      {place.bend && <BendChoice id={id} bend={place.bend} />}
      {place.bend && (
        <Button className="text-button" onPress={() => ui.setState({ lab: { node: id } })}>
          {says.tryInLab}
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
        label={says.bend}
        rows={suited}
        value={bend.kind}
        onChoose={(kind) =>
          board.dispatch(words.edits.route.bend, (job) => setBend(job, schemeId, id, { kind }))
        }
      />
      {bend.radius > 0 && (
        <QuantityField
          label={says.radiusRatio}
          value={formatTrimmed(bend.radiusRatio)}
          parse={parseRatio}
          onCommit={(radiusRatio) =>
            board.dispatch(words.edits.route.bendRadius, (job) =>
              setBend(job, schemeId, id, { kind: bend.kind, radiusRatio }),
            )
          }
        />
      )}
      <Terms of={['gore', 'mitred']} />
      {findBend(bend.kind)?.caution && <p className="caution">{findBend(bend.kind)?.caution}</p>}
      <Figures>
        <Figure name={says.trueTurn}>{formatAngle(bend.angle)}</Figure>
        {bend.radius > 0 && (
          <Figure name={says.radius} term="bendRadius">
            {formatLength(bend.radius, units)}
          </Figure>
        )}
        {bend.tangent > 0 && (
          <Figure name={says.setback} term="setback">
            {formatLength(bend.tangent, units)}
          </Figure>
        )}
      </Figures>
    </>
  );
}

const transitionKinds = [
  { id: 'conical', name: says.transitions.conical, what: says.transitions.conicalMeans },
  { id: 'abrupt', name: says.transitions.abrupt, what: says.transitions.abruptMeans },
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
        label={says.transition(sectionWords(transition.from, units), sectionWords(transition.to, units))}
        rows={transitionKinds}
        value={transition.kind}
        onChoose={(kind) =>
          board.dispatch(words.edits.route.transition, (job) =>
            setTransition(job, schemeId, id, { kind: kind === 'abrupt' ? 'abrupt' : 'conical' }),
          )
        }
      />
      {transition.kind === 'conical' && (
        <QuantityField
          label={says.coneAngle}
          value={formatAngle(transition.angle)}
          parse={(text) => {
            const read = parseAngle(text, units);
            return read.ok && (read.value <= 0 || read.value > 180)
              ? { ok: false, message: says.coneAngleRefused }
              : read;
          }}
          onCommit={(angle) =>
            board.dispatch(words.edits.route.transition, (job) =>
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
        label={says.cap}
        rows={caps}
        value={cap}
        onChoose={(chosen) =>
          board.dispatch(words.edits.route.cap, (job) => {
            setCap(job, schemeId, id, chosen);
          })
        }
      />
      {row && <p className="hint">{row.what}</p>}
      {row?.caution && <p className="caution">{row.caution}</p>}
      {row && arriving && (
        <QuantityField
          label={says.opening}
          value={quantity('area', opening ?? row.openingRatio * area(arriving), units).text}
          parse={(text) => {
            const read = parseArea(text, units);
            return read.ok && read.value <= 0 ? { ok: false, message: says.openingRefused } : read;
          }}
          description={opening === undefined ? says.openingOfCatalogue : says.openingTyped}
          onCommit={(value) =>
            board.dispatch(words.edits.route.capOpening, (job) => setCapOpening(job, schemeId, id, value))
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
      label={says.openEnd}
      rows={caps}
      value=""
      onChoose={(chosen) =>
        board.dispatch(words.edits.route.placeCap, (job) => {
          setCap(job, schemeId, id, chosen);
        })
      }
    />
  );
}

const axes = [
  { name: says.east, axis: 0 },
  { name: says.north, axis: 1 },
  { name: says.height, axis: 2 },
] as const;

function Place({ node }: { node: Node }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  return (
    <div className="place">
      <h3>{says.place}</h3>
      <div className="place-fields">
        {axes.map(({ name, axis }) => (
          <QuantityField
            key={axis}
            label={name}
            value={formatLength(node.at[axis], units)}
            parse={(text) => parseLength(text, units, { negative: true })}
            onCommit={(value) =>
              board.dispatch(words.edits.route.moveNode, (job) => {
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
    return { ok: false, message: says.radiusRefused } as const;
  return read;
}

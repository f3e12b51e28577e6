import type { UnitSystem } from '../../graph/document.ts';
import { setDuct, setLength, setMaterial, setStretch } from '../../graph/edits/index.ts';
import { findMaterial, materials } from '../../hydraulics/catalogue.ts';
import {
  formatFlow,
  formatLarge,
  formatLength,
  formatLossRate,
  formatNumber,
  formatPressure,
  formatRun,
  formatVelocity,
  parseLength,
  parseNumber,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure, QuantityField } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { Warmth } from '../parts/Warmth.tsx';
import { segmentName } from '../places.ts';
import { percent } from '../wording.ts';
import { RowChooser, SectionChooser } from './choosers.tsx';
import { FittingFigures } from './FittingFigures.tsx';
import { InlineParts } from './InlineParts.tsx';
import { ReachSwitch, useReached } from './Reach.tsx';
import { Source } from './Source.tsx';

const says = words.panels.duct;

/** One duct: what it is made of, and what the air does in it at the speed being looked at. */
export function SegmentDetails({ id }: { id: string }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const route = useBoard((state) => state.solution.route);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const schemeId = useBoard((state) => state.schemeId);
  const speedIndex = useBoard((state) => state.speed);
  const at = { speed: speedIndex, at: id };
  const reached = useReached(id);
  const segment = route.segments.get(id);
  if (!segment) return null;
  const material = findMaterial(segment.material);
  const result = speed?.outcome.solved ? speed.outcome.segments.get(id) : undefined;
  const parts = speed?.outcome.solved ? speed.outcome.fittings.filter((fitting) => fitting.at === id) : [];

  return (
    <section className="details" aria-label={says.label}>
      <h2>{says.heading(segmentName(route, id))}</h2>
      <QuantityField
        label={says.length}
        value={formatLength(segment.length, units)}
        parse={(text) => parseLegLength(text, units)}
        onCommit={(length) =>
          board.dispatch(words.edits.route.length, (job) => {
            setLength(job, schemeId, id, length);
          })
        }
      />
      <ReachSwitch id={id} />
      <SectionChooser
        label={says.size}
        value={segment.section}
        onChoose={(section) =>
          board.dispatch(words.edits.route.ductSize, (job) => setDuct(job, schemeId, reached, section))
        }
      />
      <RowChooser
        label={says.material}
        rows={materials}
        value={segment.material}
        onChoose={(chosen) =>
          board.dispatch(words.edits.route.material, (job) => setMaterial(job, schemeId, reached, chosen))
        }
      />
      {material?.caution && <p className="caution">{material.caution}</p>}
      {material?.compression && (
        <QuantityField
          label={says.stretch}
          value={`${Math.round(100 * segment.stretch)} %`}
          parse={parseStretch}
          description={says.stretchHint}
          onCommit={(stretch) =>
            board.dispatch(words.edits.route.stretch, (job) => setStretch(job, schemeId, [id], stretch))
          }
        />
      )}
      <Figures>
        <Figure name={says.straight}>{formatLength(segment.straight, units)}</Figure>
        {result && (
          <>
            <Figure name={says.flow}>{formatFlow(result.flow, units)}</Figure>
            <Figure name={says.velocity} term="velocity" refTo={{ figure: 'velocity', ...at }}>
              {formatVelocity(result.velocity, units)}
            </Figure>
            <Figure
              name={says.velocityPressure}
              term="velocityPressure"
              refTo={{ figure: 'velocity pressure', ...at }}
            >
              {formatPressure(result.velocityPressure, units)}
            </Figure>
            <Figure
              name={says.friction}
              term="friction"
              note={says.over(formatRun(result.frictionLength, units))}
              refTo={{ figure: 'friction loss', ...at }}
            >
              {formatPressure(result.frictionLoss, units)}
            </Figure>
            <Figure name={says.lossRate} term="lossRate" refTo={{ figure: 'loss per metre', ...at }}>
              {formatLossRate(result.lossPerMetre, units)}
            </Figure>
            <Figure name={says.share} refTo={{ figure: 'share of pressure', ...at }}>
              {percent(result.share)}
            </Figure>
            <Figure name={says.reynolds} term="reynolds" refTo={{ figure: 'Reynolds number', ...at }}>
              {formatLarge(result.reynolds)}
            </Figure>
            <Figure
              name={says.frictionFactor}
              term="frictionFactor"
              refTo={{ figure: 'friction factor', ...at }}
            >
              {formatNumber(result.frictionFactor, 4)}
            </Figure>
          </>
        )}
      </Figures>
      {!result && speed && !speed.outcome.solved && <p className="hint">{speed.outcome.reason}</p>}
      {result && <Source of={result.provenance} title={says.source} />}
      <Warmth id={id} result={result} />
      <InlineParts id={id} length={segment.length} />
      {parts.map((part) => (
        <div key={part.id} className="part">
          <FittingFigures fitting={part} />
        </div>
      ))}
    </section>
  );
}

function parseLegLength(text: string, units: UnitSystem) {
  const read = parseLength(text, units);
  if (read.ok && read.value < 0.01) return { ok: false, message: says.tooShort } as const;
  return read;
}

function parseStretch(text: string) {
  const read = parseNumber(text.replace('%', ''));
  if (!read.ok || read.value < 20 || read.value > 100)
    return { ok: false, message: says.stretchRefused } as const;
  return { ok: true, value: read.value / 100 } as const;
}

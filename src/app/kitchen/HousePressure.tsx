import type { FigureRef } from '../../graph/derive/derivation.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatFlow, quantity } from '../../units/index.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { beyondLimit } from './house.ts';
import { housePascals } from './reading.ts';

/** What the chosen speed does to the pressure of the house, against what its appliances bear. */
export function HousePressure() {
  const units = useBoard((state) => state.units);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const index = useBoard((state) => state.speed);
  if (!speed?.outcome.solved) return null;
  const { house } = speed.outcome;
  if (!house) return null;
  const ref = (figure: FigureRef['figure']): FigureRef => ({ figure, speed: index });
  const { limit } = house;
  const beyond = beyondLimit(house);
  return (
    <section className="details" aria-label="House pressure">
      <h3>House pressure at {speed.name}</h3>
      <Figures>
        <Figure
          name="Against outdoors"
          refTo={ref('house pressure')}
          {...(limit ? { note: `limit −${limit.value} Pa` } : {})}
        >
          <span className={beyond ? 'beyond' : undefined}>{housePascals(house.pressure)}</span>
        </Figure>
        <Figure name="Out by the hood">{formatFlow(house.hoods, units)}</Figure>
        {house.otherExhaust > 0 && (
          <Figure name="Out by other fans">{formatFlow(house.otherExhaust, units)}</Figure>
        )}
        <Figure name="In by the leaks" refTo={ref('house leakage')}>
          {formatFlow(house.leakage, units)}
        </Figure>
        {house.makeUp > 0 && <Figure name="In as make-up air">{formatFlow(house.makeUp, units)}</Figure>}
        {house.makeUpNeeded && (
          <Figure
            name="Make-up air to hold the limit"
            refTo={ref('make-up air')}
            note={`a free opening of ${quantity('area', house.makeUpNeeded.opening, units).text}`}
          >
            {formatFlow(house.makeUpNeeded.flow, units)}
          </Figure>
        )}
      </Figures>
      <Caution beyond={beyond} />
    </section>
  );
}

/** The carbon monoxide sentence, where the appliances and the make-up air are chosen. */
function Caution({ beyond }: { beyond: boolean }) {
  const house = useBoard((state) => {
    const outcome = state.solution.speeds[state.speed]?.outcome;
    return outcome?.solved ? outcome.house : null;
  });
  const burns = useBoard((state) => (state.live.house?.combustion.length ?? 0) > 0);
  const limit = house?.limit;
  const sentence = findLimit(limit?.row.replace('limits/', '') ?? '')?.caution;
  if (!limit)
    return burns ? (
      <p className="caution">No limit is known for what burns in this house. {findLimit('none')?.caution}</p>
    ) : null;
  const source = (
    <span className="limit-source">
      {limit.appliance}: {limit.source} ({sourceWords[limit.sourceKind]}).
    </span>
  );
  if (beyond && limit.canSpill)
    return (
      <p className="caution">
        <strong>Carbon monoxide.</strong> The house stands below what the appliance bears. {sentence} Let in
        make-up air, or choose sealed appliances.
        {source}
      </p>
    );
  if (beyond)
    return (
      <p className="caution">
        The house stands further below outdoors than is advised even where nothing can spill.
        {source}
      </p>
    );
  return limit.canSpill ? (
    <p className="hint">
      Within the limit by this estimate. {sentence}
      {source}
    </p>
  ) : (
    <p className="hint">{source}</p>
  );
}

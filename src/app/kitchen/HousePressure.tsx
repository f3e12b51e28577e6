import type { FigureRef } from '../../graph/derive/derivation.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatFlow, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { beyondLimit } from './house.ts';
import { housePascals } from './reading.ts';

const says = words.kitchen.housePressure;

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
    <section className="details" aria-label={says.label}>
      <h3>{says.heading(speed.name)}</h3>
      <Figures>
        <Figure
          name={says.againstOutdoors}
          term="housePressure"
          refTo={ref('house pressure')}
          {...(limit ? { note: says.limit(String(limit.value)) } : {})}
        >
          <span className={beyond ? 'beyond' : undefined}>{housePascals(house.pressure)}</span>
        </Figure>
        <Figure name={says.byHood}>{formatFlow(house.hoods, units)}</Figure>
        {house.otherExhaust > 0 && (
          <Figure name={says.byOtherFans}>{formatFlow(house.otherExhaust, units)}</Figure>
        )}
        <Figure name={says.byLeaks} refTo={ref('house leakage')}>
          {formatFlow(house.leakage, units)}
        </Figure>
        {house.makeUp > 0 && <Figure name={says.asMakeUp}>{formatFlow(house.makeUp, units)}</Figure>}
        {house.makeUpNeeded && (
          <Figure
            name={says.toHoldLimit}
            term="makeUpAir"
            refTo={ref('make-up air')}
            note={says.opening(quantity('area', house.makeUpNeeded.opening, units).text)}
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
    return burns ? <p className="caution">{says.noLimit(findLimit('none')?.caution ?? '')}</p> : null;
  const source = (
    <span className="limit-source">
      {limit.appliance}: {limit.source} ({sourceWords[limit.sourceKind]}).
    </span>
  );
  if (beyond && limit.canSpill)
    return (
      <p className="caution">
        <strong>{says.carbonMonoxide}</strong> {says.spills(sentence ?? '')}
        {source}
      </p>
    );
  if (beyond)
    return (
      <p className="caution">
        {says.furtherBelow}
        {source}
      </p>
    );
  return limit.canSpill ? (
    <p className="hint">
      {says.withinLimit(sentence ?? '')}
      {source}
    </p>
  ) : (
    <p className="hint">{source}</p>
  );
}

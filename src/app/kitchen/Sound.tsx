import type { FigureRef } from '../../graph/derive/derivation.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { decibels, sonesText } from '../strip/words.ts';
import { capitalized } from '../wording.ts';

const says = words.kitchen.sound;

/** What is heard at the chosen speed in the kitchen and outside, and what makes it. */
export function Sound() {
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const index = useBoard((state) => state.speed);
  if (!speed?.outcome.solved) return null;
  const { cook, outside, uncertainty } = speed.outcome.sound;
  const ref = (figure: FigureRef['figure']): FigureRef => ({ figure, speed: index });
  return (
    <section className="details" aria-label={says.label}>
      <h3>{says.heading(speed.name)}</h3>
      <Figures>
        <Figure
          name={says.atCook}
          term="decibel"
          note={sonesText(cook.sones)}
          refTo={ref('sound at the cook')}
        >
          {decibels(cook.level, uncertainty)}
        </Figure>
        <Figure name={says.outside} term="sone" note={sonesText(outside.sones)} refTo={ref('sound outside')}>
          {decibels(outside.level, uncertainty)}
        </Figure>
      </Figures>
      <h4>{says.parts}</h4>
      <Figures>
        {[...cook.byCause]
          .sort(([, a], [, b]) => b - a)
          .map(([cause, level]) => (
            <Figure
              key={cause}
              name={capitalized(words.causes.sound[cause])}
              refTo={{ figure: 'sound at the cook', speed: index, at: cause }}
            >
              {says.level(Math.round(level))}
            </Figure>
          ))}
      </Figures>
      <p className="hint">{says.estimate}</p>
    </section>
  );
}

import type { FigureRef } from '../../graph/derive/derivation.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { decibels, sonesText } from '../strip/words.ts';
import { capitalized } from '../wording.ts';

/** What is heard at the chosen speed in the kitchen and outside, and what makes it. */
export function Sound() {
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const index = useBoard((state) => state.speed);
  if (!speed?.outcome.solved) return null;
  const { cook, outside, uncertainty } = speed.outcome.sound;
  const ref = (figure: FigureRef['figure']): FigureRef => ({ figure, speed: index });
  return (
    <section className="details" aria-label="Sound">
      <h3>Sound at {speed.name}</h3>
      <Figures>
        <Figure name="At the cook's head" note={sonesText(cook.sones)} refTo={ref('sound at the cook')}>
          {decibels(cook.level, uncertainty)}
        </Figure>
        <Figure name="Outside, beneath the cap" note={sonesText(outside.sones)} refTo={ref('sound outside')}>
          {decibels(outside.level, uncertainty)}
        </Figure>
      </Figures>
      <h4>What makes it at the cook's head</h4>
      <Figures>
        {[...cook.byCause]
          .sort(([, a], [, b]) => b - a)
          .map(([cause, level]) => (
            <Figure
              key={cause}
              name={capitalized(cause)}
              refTo={{ figure: 'sound at the cook', speed: index, at: cause }}
            >
              {Math.round(level)} dBA
            </Figure>
          ))}
      </Figures>
      <p className="hint">
        An estimate to rank routes by. Levels do not add up as figures do: two alike make 3 dB more, and one
        far below the loudest adds nothing.
      </p>
    </section>
  );
}

import { produce } from 'immer';
import { Button } from 'react-aria-components';
import type { Effects } from '../../advice/proposals/effects.ts';
import {
  bringsWords,
  effectWords,
  fitWords,
  houseWords,
  settlesWords,
} from '../../advice/proposals/effects-text.ts';
import type { Recipe } from '../../canvas/board.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { formatFlow, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useAdvice, useApp, useBoard } from '../context.ts';
import { Icon } from '../icons.tsx';
import { gained } from '../wording.ts';

const says = words.proposals.card;

/** A change, or several together, that was solved and can be made. */
export interface Offered extends Effects {
  readonly title: string;
  readonly reason: string;
  readonly recipe: Recipe;
  readonly label: string;
  readonly solution: SchemeSolution;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

interface ChangeCardProps {
  readonly change: Offered;
  readonly kind: string;
  /** The changes that it is made of, where there are several. */
  readonly members?: readonly { readonly id: string; readonly title: string }[];
  /** What the scheme calls for once it is made, that is not part of it. */
  readonly calls?: readonly { readonly id: string; readonly title: string }[];
  /** Air that fills its bar, m3/s. */
  readonly most: number;
  readonly remedy?: boolean;
}

/** Shows a change as a ghost on the sheets while it is pointed at, and makes it in one step when pressed. */
export function ChangeCard({ change, kind, members, calls = [], most, remedy = false }: ChangeCardProps) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const { computing } = useAdvice();
  const show = () =>
    board.set({
      ghost: { job: produce(board.getState().job, change.recipe), solution: change.solution },
      hover: { nodes: change.nodes, segments: change.segments },
    });
  const hide = () => board.set({ ghost: null, hover: { nodes: [], segments: [] } });
  const misfit = fitWords(change);
  const settles = settlesWords(change);
  return (
    <li>
      <Button
        className="proposal"
        data-proposal={kind}
        {...(remedy ? { 'data-remedy': '' } : {})}
        isDisabled={computing}
        onHoverStart={show}
        onHoverEnd={hide}
        onFocus={show}
        onBlur={hide}
        onPress={() => {
          hide();
          board.dispatch(change.label, change.recipe);
        }}
      >
        <span className="proposal-head">
          <span className="proposal-title">
            {members
              ? members.map(({ id, title }) => (
                  <span key={id} className="proposal-member">
                    {title}
                  </span>
                ))
              : change.title}
          </span>
          <span className="gain">{gained(change.gain, units)}</span>
        </span>
        <span className="bar thin" aria-hidden="true">
          <span style={{ width: `${most > 0 ? Math.max(0, (100 * change.gain) / most) : 0}%` }} />
        </span>
        <span className="proposal-reason">{change.reason}</span>
        <span className="proposal-effects">{effectWords(change, units).join(' · ')}</span>
        <span className="proposal-speeds">
          {change.gains.map(({ speed, before, after }) => (
            <span key={speed}>
              {speed} {bare(before, units)} → {bare(after, units)}
            </span>
          ))}
        </span>
        {settles.length > 0 && (
          <span className="proposal-settles">
            <Icon name="tick" size={13} /> {settles.join(', ')}
          </span>
        )}
        {misfit ? (
          <span className="proposal-warning">
            <Icon name="caution" size={13} /> {misfit}
          </span>
        ) : (
          <span className="proposal-settles">
            <Icon name="tick" size={13} /> {says.fits}
          </span>
        )}
        {[...houseWords(change), ...bringsWords(change)].map((words) => (
          <span key={words} className="proposal-warning">
            <Icon name="caution" size={13} /> {words}
          </span>
        ))}
        {calls.map(({ id, title }) => (
          <span key={id} className="proposal-warning">
            <Icon name="caution" size={13} /> {says.calls(title)}
          </span>
        ))}
      </Button>
    </li>
  );
}

/** A flow without its unit, where the gain beside it carries the same. */
function bare(flow: number, units: System): string {
  return formatFlow(flow, units).replace(/\s.*$/, '');
}

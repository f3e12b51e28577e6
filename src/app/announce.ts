import type { BoardState } from '../canvas/board.ts';
import { formatFlow } from '../units/index.ts';
import { words } from '../words/index.ts';
import type { AppStore } from './store.ts';
import type { Ui } from './ui.ts';
import { gained, percent } from './wording.ts';

const says = words.shell.delivered;

/** Sentences said within this time of each other are read as one, ms: an edit and what came of it. */
const TOGETHER = 160;

/** Sentences for the one live region, in the order in which they come. */
export interface Announcer {
  say(text: string): void;
  /** Forgets what was not said yet, and stops. */
  stop(): void;
}

/** Gathers sentences and says them together; the same words twice are two announcements. */
export function createAnnouncer(ui: Ui): Announcer {
  let waiting: string[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const speak = () => {
    const text = waiting.join(' ');
    waiting = [];
    timer = undefined;
    ui.setState(({ said }) => ({ said: { text, turn: said.turn + 1 } }));
  };
  return {
    say(text) {
      if (text === '' || waiting.includes(text)) return;
      waiting.push(text);
      clearTimeout(timer);
      timer = setTimeout(speak, TOGETHER);
    },
    stop() {
      clearTimeout(timer);
      waiting = [];
    },
  };
}

/** Says after every edit what the air now does; the answer stops. Opening another job is no edit. */
export function announceResults(board: AppStore, { say }: Announcer): () => void {
  let settled = board.getState();
  return board.subscribe((state, before) => {
    const was = settled;
    if (state.live === state.job) settled = state;
    if (state.job === before.job || state.schemeId !== was.schemeId) return;
    if (board.steps().labels.length > 0) say(resultWords(state, was));
  });
}

/** "High: 417 cfm, 87 % of rated; 12 cfm more." or why there is no number; empty where nothing changed. */
export function resultWords(now: BoardState, before: Pick<BoardState, 'solution' | 'speed'>): string {
  const speed = now.solution.speeds[now.speed];
  if (!speed) return '';
  const { outcome } = speed;
  const was = before.solution.speeds.find(({ hood, speed: at }) => hood === speed.hood && at === speed.speed);
  if (!outcome.solved) {
    const same = was && !was.outcome.solved && was.outcome.reason === outcome.reason;
    return same ? '' : outcome.reason;
  }
  const name = speed.name.charAt(0).toUpperCase() + speed.name.slice(1);
  const flow = formatFlow(outcome.flow, now.units);
  const delivered =
    speed.ratedFlow > 0
      ? says.ofRated(name, flow, percent(outcome.flow / speed.ratedFlow))
      : says.delivered(name, flow);
  if (!was?.outcome.solved) return says.is(delivered);
  const change = outcome.flow - was.outcome.flow;
  const amount = gained(change, now.units);
  if (/^[+−]0 /.test(amount)) return was.outcome.flow === outcome.flow ? '' : says.same(delivered);
  const by = amount.slice(1);
  return change > 0 ? says.more(delivered, by) : says.less(delivered, by);
}

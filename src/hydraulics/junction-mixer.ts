/** A way through a junction with the coefficient that the last flows ask for. */
export interface MixedWay {
  readonly edge: string;
  readonly way: 'straight' | 'branch';
  readonly converging: boolean;
  readonly c: number;
}

/** After so many rounds the iteration goes on slowly and without aim: a stream keeps turning round. */
const WILD_ROUNDS = 40;
/** Share of the way to the new coefficients that a round goes: at first, and at least. */
const DAMPING = 0.7;
const LEAST_DAMPING = 0.1;
/** By how much the damping grows again in a round in which no stream turns round. */
const RECOVERY = 1.2;
/** The most that a round is aimed by the one before. */
const MOST_AIM = 5;

/**
 * The sign with which a way's coefficient goes on smoothly where its air turns round: that of a branch is
 * then a loss on one side and a gain on the other.
 */
function signOf({ way, converging }: MixedWay): 1 | -1 {
  return way === 'branch' && converging ? -1 : 1;
}

export interface Mixer {
  /** Coefficients to charge in the next round, from those that the last flows ask for. */
  mix(targets: readonly MixedWay[]): readonly number[];
  /** The round in which a stream last turned round. */
  readonly turnedAt: number;
}

/**
 * The next coefficients of a junction from what the last ones led to: damped, and aimed by the round before
 * (Anderson's acceleration with a memory of one step). Where a stream has turned round it goes on from the
 * values of before, with half the step and without aim.
 */
export function mixer(): Mixer {
  const values = new Map<string, number>();
  let lastKey = '';
  let before: { readonly x: readonly number[]; readonly step: readonly number[] } | null = null;
  let damping = DAMPING;
  let round = 1;
  let turnedAt = 1;

  function mix(targets: readonly MixedWay[]): readonly number[] {
    const signs = targets.map(signOf);
    const names = targets.map(({ edge, way }) => (way === 'branch' ? edge : way));
    const wanted = targets.map(({ c }, i) => c * (signs[i] as number));
    const key = names.map((name, i) => `${name} ${signs[i]}`).join();
    const first = values.size === 0;
    const wild = ++round > WILD_ROUNDS;
    if (key !== lastKey) {
      before = null;
      turnedAt = round;
      if (!first) damping = Math.max(LEAST_DAMPING, damping / 2);
    } else damping = Math.min(DAMPING, RECOVERY * damping);
    if (wild) damping = LEAST_DAMPING;
    const x = names.map((name, i) => values.get(name) ?? (first ? (wanted[i] as number) : 0));
    const next = aimed(x, wanted, damping, wild ? null : before);
    before = { x, step: wanted.map((w, i) => w - (x[i] as number)) };
    lastKey = key;
    names.forEach((name, i) => {
      values.set(name, next[i] as number);
    });
    return next.map((g, i) => g * (signs[i] as number));
  }

  return {
    mix,
    get turnedAt() {
      return turnedAt;
    },
  };
}

/** A damped step from x to what is wanted, aimed by the step before and not far beyond both. */
function aimed(
  x: readonly number[],
  wanted: readonly number[],
  damping: number,
  before: { readonly x: readonly number[]; readonly step: readonly number[] } | null,
): readonly number[] {
  const step = wanted.map((w, i) => w - (x[i] as number));
  if (!before) return step.map((f, i) => (x[i] as number) + damping * f);
  const turn = step.map((f, i) => f - (before.step[i] as number));
  const size = turn.reduce((sum, t) => sum + t * t, 0);
  const along = size > 0 ? turn.reduce((sum, t, i) => sum + t * (step[i] as number), 0) / size : 0;
  const share = Math.min(MOST_AIM, Math.max(-MOST_AIM, along));
  return step.map((f, i) => {
    const [a, b] = [x[i] as number, wanted[i] as number];
    const aim = share * (a - (before.x[i] as number) + damping * (turn[i] as number));
    const beyond = Math.abs(f);
    return Math.min(Math.max(a, b) + beyond, Math.max(Math.min(a, b) - beyond, a + damping * f - aim));
  });
}

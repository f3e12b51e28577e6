import { type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';

const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** The place that a key moves to among `count`, from `at`; undefined for a key that does not move. */
export function rovingStep(key: string, at: number, count: number): number | undefined {
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  const step = steps[key];
  return step === undefined ? undefined : (at + step + count) % count;
}

interface Roving<E extends HTMLElement> {
  readonly ref: RefObject<E | null>;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** What can be asked: figures where they come from, words what they mean. */
const asked = '[data-explain], [data-term]';

/** Many figures and words, one stop of the Tab key: the arrows, Home and End move among them. */
export function useRoving<E extends HTMLElement>(): Roving<E> {
  const ref = useRef<E>(null);
  const figures = () => [...(ref.current?.querySelectorAll<HTMLElement>(asked) ?? [])];
  useEffect(() => {
    const all = figures();
    const stop = all.find((figure) => figure === document.activeElement) ?? all[0];
    for (const figure of all) figure.tabIndex = figure === stop ? 0 : -1;
  });
  const onKeyDown = (event: KeyboardEvent) => {
    const all = figures();
    const at = all.indexOf(event.target as HTMLElement);
    const next = at < 0 ? undefined : rovingStep(event.key, at, all.length);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    for (const [i, figure] of all.entries()) figure.tabIndex = i === next ? 0 : -1;
    all[next]?.focus();
  };
  return { ref, onKeyDown };
}

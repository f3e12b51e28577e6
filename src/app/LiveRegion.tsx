import { useUi } from './context.ts';

/** The one place from which a screen reader hears what has happened. */
export function LiveRegion() {
  const { text, turn } = useUi((state) => state.said);
  return (
    <p className="unseen" role="status" aria-live="polite" data-said={turn}>
      {/* A sentence that comes twice differs in a space, or it would be read once. */}
      {turn % 2 === 0 ? text : `${text}\u00a0`}
    </p>
  );
}

import { lazy, Suspense } from 'react';
import { useUnderlays } from '../context.ts';

const PlaceDialog = lazy(() => import('./PlaceDialog.tsx'));

/** What placing a picture shows over the desk; the dialog's code comes with the first file. */
export function Underlays() {
  const { stage } = useUnderlays();
  if (stage.stage === 'idle') return null;
  return (
    <Suspense>
      <PlaceDialog />
    </Suspense>
  );
}

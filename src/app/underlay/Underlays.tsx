import { lazy, Suspense } from 'react';
import { useUnderlays } from '../context.ts';
import { DropFiles } from './DropFiles.tsx';

const PlaceDialog = lazy(() => import('./PlaceDialog.tsx'));

/** What placing a picture shows over the desk; the dialog's code comes with the first file. */
export function Underlays() {
  const { stage } = useUnderlays();
  return (
    <>
      <DropFiles />
      {stage.stage !== 'idle' && (
        <Suspense>
          <PlaceDialog />
        </Suspense>
      )}
    </>
  );
}

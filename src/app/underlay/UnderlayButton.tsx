import { lazy, Suspense } from 'react';
import { Dialog, DialogTrigger, Heading, Popover } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useUnderlays } from '../context.ts';
import { IconButton } from '../controls.tsx';

const says = words.underlay.list;

const UnderlayList = lazy(() => import('./UnderlayList.tsx'));

/** The button on the rail that opens the list of underlays; the list's code comes when it is first opened. */
export function UnderlayButton() {
  const { underlays } = useApp();
  const { listed } = useUnderlays();
  return (
    <DialogTrigger isOpen={listed} onOpenChange={underlays.list}>
      <IconButton icon="underlay" label={says.heading} placement="right" />
      <Popover className="popover underlays" placement="right top" offset={10}>
        <Dialog>
          <Heading slot="title">{says.heading}</Heading>
          <Suspense>
            <UnderlayList />
          </Suspense>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

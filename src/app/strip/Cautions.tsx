import { useRef, useState } from 'react';
import { Button, Dialog, Heading, Popover } from 'react-aria-components';

/** What can hurt someone, told where the numbers stand. */
export function Cautions() {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  return (
    <>
      <Button
        ref={button}
        className="text-button"
        aria-haspopup="dialog"
        aria-expanded={open}
        onPress={() => setOpen(true)}
      >
        Cautions
      </Button>
      <Popover
        className="popover cautions"
        triggerRef={button}
        placement="top end"
        isOpen={open}
        onOpenChange={setOpen}
      >
        <Dialog aria-label="Cautions">
          <Heading slot="title">Before anything is built</Heading>
          <ul>
            <li>
              <strong>Carbon monoxide.</strong> A hood pulls air out of the house. Where a water heater,
              boiler, furnace, stove or fireplace draws its air from the same house, it can pull flue gas back
              in. Have the installer test for spillage with every exhaust fan running, and plan the make-up
              air.
            </li>
            <li>
              <strong>Grease burns.</strong> Use smooth metal duct that can be cleaned, with no screw points
              in the air stream and the clearances that the code and the hood's instructions ask for. Never
              plastic or foil flexible duct where they forbid it.
            </li>
            <li>
              <strong>Outdoors means outdoors.</strong> Never end a kitchen exhaust in an attic, a crawl space
              or a wall.
            </li>
            <li>
              <strong>Homes only.</strong> Commercial cooking has its own codes, hoods and fire suppression,
              and is outside what is computed here.
            </li>
          </ul>
        </Dialog>
      </Popover>
    </>
  );
}

import { useRef, useState } from 'react';
import { Button, Dialog, Heading, Popover } from 'react-aria-components';
import { words } from '../../words/index.ts';

const says = words.strip.cautions;

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
        {says.label}
      </Button>
      <Popover
        className="popover cautions"
        triggerRef={button}
        placement="top end"
        isOpen={open}
        onOpenChange={setOpen}
      >
        <Dialog aria-label={says.label}>
          <Heading slot="title">{says.heading}</Heading>
          <ul>
            <li>
              <strong>{says.carbonMonoxide}</strong> {says.carbonMonoxideText}
            </li>
            <li>
              <strong>{says.grease}</strong> {says.greaseText}
            </li>
            <li>
              <strong>{says.outdoors}</strong> {says.outdoorsText}
            </li>
            <li>
              <strong>{says.homes}</strong> {says.homesText}
            </li>
          </ul>
        </Dialog>
      </Popover>
    </>
  );
}

import { useRef, useState } from 'react';
import { Button, Dialog, Heading, Popover } from 'react-aria-components';
import { words } from '../../words/index.ts';

const label = words.strip.cautions;

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
        {label}
      </Button>
      <Popover
        className="popover cautions"
        triggerRef={button}
        placement="top end"
        isOpen={open}
        onOpenChange={setOpen}
      >
        <Dialog aria-label={label}>
          <Heading slot="title">{words.cautions.heading}</Heading>
          <ul>
            {words.cautions.all.map(({ title, text }) => (
              <li key={title}>
                <strong>{title}</strong> {text}
              </li>
            ))}
          </ul>
        </Dialog>
      </Popover>
    </>
  );
}

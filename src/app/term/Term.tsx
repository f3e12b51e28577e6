import { type ReactNode, useEffect, useState } from 'react';
import { Button, Tooltip, TooltipTrigger } from 'react-aria-components';
import { words } from '../../words/index.ts';
import './term.css';

export type TermId = keyof typeof words.glossary.entries;

interface TermProps {
  readonly of: TermId;
  readonly children: ReactNode;
}

/**
 * A word of the trade that says what it means: when it is pointed at, reached by a key, or tapped. Escape or a
 * tap elsewhere takes the words away again.
 */
export function Term({ of, children }: TermProps) {
  const [open, setOpen] = useState(false);
  const { term, text } = words.glossary.entries[of];
  useEffect(() => {
    if (!open) return;
    const close = ({ target }: PointerEvent) => {
      if (!(target instanceof Element && target.closest('.term, .meaning'))) setOpen(false);
    };
    document.addEventListener('pointerdown', close, true);
    return () => document.removeEventListener('pointerdown', close, true);
  }, [open]);
  return (
    <TooltipTrigger
      isOpen={open}
      onOpenChange={setOpen}
      delay={350}
      closeDelay={150}
      shouldCloseOnPress={false}
    >
      <Button className="term" data-term={of} onPress={() => setOpen(true)}>
        {children}
      </Button>
      <Tooltip className="tooltip meaning" placement="top" offset={4}>
        <strong>{term}</strong> {text}
      </Tooltip>
    </TooltipTrigger>
  );
}

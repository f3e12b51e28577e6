import { useEffect, useState } from 'react';
import { ToggleButton } from 'react-aria-components';
import { words } from '../../words/index.ts';

const says = words.lab.frame;

export interface Presenting {
  readonly on: boolean;
  readonly set: (on: boolean) => void;
}

/**
 * Big type on a clean sheet, over the whole screen where the browser lets it. Escape leaves it; so does
 * leaving the full screen by the browser's own means, and closing what is presented.
 *
 * @param open whether there is anything to present
 */
export function usePresenting(open: boolean): Presenting {
  const [on, setOn] = useState(false);
  const active = on && open;
  useEffect(() => {
    if (!active) return;
    // A browser that refuses the full screen still shows big type.
    document.documentElement.requestFullscreen?.().catch(() => {});
    const leave = () => setOn(false);
    const hear = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      leave();
    };
    const left = () => {
      if (!document.fullscreenElement) leave();
    };
    window.addEventListener('keydown', hear, { capture: true });
    document.addEventListener('fullscreenchange', left);
    return () => {
      window.removeEventListener('keydown', hear, { capture: true });
      document.removeEventListener('fullscreenchange', left);
      if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
    };
  }, [active]);
  return { on: active, set: setOn };
}

export function PresentButton({ presenting }: { presenting: Presenting }) {
  return (
    <ToggleButton className="button" isSelected={presenting.on} onChange={presenting.set}>
      {presenting.on ? says.endPresenting : says.present}
    </ToggleButton>
  );
}

import { type RefObject, useEffect, useRef } from 'react';

/**
 * For what opens in the desk without covering it: takes the focus in when it opens, and gives it back when it is
 * closed from within; to the floor sheet where the opener is no more. The element needs a `tabIndex`.
 */
export function useFocusBack(): RefObject<HTMLElement | null> {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    let opener: Element | null = null;
    // A menu gives the focus back to its button in the frame after it has closed.
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => {
        opener = document.activeElement;
        box.current?.focus({ preventScroll: true });
      });
    });
    return () => {
      cancelAnimationFrame(frame);
      if (document.activeElement !== document.body) return;
      const known = opener instanceof HTMLElement && opener !== document.body && opener.isConnected;
      (known
        ? (opener as HTMLElement)
        : document.querySelector<HTMLElement>('[data-sheet="floor"]')
      )?.focus();
    };
  }, []);
  return box;
}

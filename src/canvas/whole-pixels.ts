import { type RefObject, useEffect, useState } from 'react';
import type { Size } from '../drawing/viewport.ts';

export interface Placement extends Size {
  /** From the frame's corner to the next whole pixel. */
  readonly left: number;
  readonly top: number;
}

/** The part of a frame that begins and ends on whole pixels; null until it has a size. */
export function useWholePixels(frame: RefObject<HTMLDivElement | null>): Placement | null {
  const [place, setPlace] = useState<Placement | null>(null);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = () => {
      const rect = element.getBoundingClientRect();
      const [x, y] = [Math.ceil(rect.left - 1e-3), Math.ceil(rect.top - 1e-3)];
      const next = {
        left: x - rect.left,
        top: y - rect.top,
        width: Math.floor(rect.right + 1e-3) - x,
        height: Math.floor(rect.bottom + 1e-3) - y,
      };
      if (next.width > 0 && next.height > 0) setPlace(next);
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame]);
  return place;
}

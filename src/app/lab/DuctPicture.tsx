import type { ReactNode, RefObject } from 'react';
import { SheetSvg, viewBoxOf } from '../../canvas/sheet-svg.tsx';
import type { Drawable } from '../../drawing/stroke.ts';
import type { Bounds } from '../../drawing/viewport.ts';

interface DuctPictureProps {
  readonly drawables: readonly Drawable[];
  /** What is shown, m. */
  readonly bounds: Bounds;
  readonly label: string;
  readonly lit?: (item: Drawable) => boolean;
  readonly className?: string;
  readonly svg?: RefObject<SVGSVGElement | null>;
  /** Drawn over the duct, in mm with y down. */
  readonly children?: ReactNode;
}

/** Duct as the sheets draw it, true to scale, as vectors of the page. */
export function DuctPicture({ drawables, bounds, label, lit, className, svg, children }: DuctPictureProps) {
  return (
    <svg
      ref={svg}
      className={className ? `duct-picture ${className}` : 'duct-picture'}
      viewBox={viewBoxOf(bounds)}
      role="img"
      aria-label={label}
    >
      <SheetSvg drawables={drawables} {...(lit ? { lit } : {})} />
      {children}
    </svg>
  );
}

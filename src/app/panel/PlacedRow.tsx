import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { nothing, type Selection } from '../../canvas/board.ts';
import { useApp } from '../context.ts';

interface Props {
  readonly place: Selection;
  readonly className: string;
  readonly children: ReactNode;
}

/** Something said of a place: pointing at it lights the place up, pressing it goes there. Without a place it is only read. */
export function PlacedRow({ place, className, children }: Props) {
  const { board, sheets } = useApp();
  if (place.nodes.length + place.segments.length === 0) return <div className={className}>{children}</div>;
  const light = (on: boolean) => board.set({ hover: on ? place : nothing });
  return (
    <Button
      className={className}
      onHoverChange={light}
      onFocusChange={light}
      onPress={() => {
        board.set({ selection: place, tool: 'select' });
        sheets.reveal(place);
      }}
    >
      {children}
    </Button>
  );
}

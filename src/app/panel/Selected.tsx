import { useEffect, useRef } from 'react';
import type { Selection } from '../../canvas/board.ts';
import { itemsOf } from '../../canvas/selection.ts';
import { useBoard } from '../context.ts';
import { ManySelected } from './ManySelected.tsx';
import { NodeDetails } from './NodeDetails.tsx';
import { SchemeDetails } from './SchemeDetails.tsx';
import { SegmentDetails } from './SegmentDetails.tsx';

/** What is selected on the sheets, with what can be changed about it. */
export function Selected() {
  const selection = useBoard((state) => state.selection);
  const top = useRef<HTMLDivElement>(null);
  const place = [...selection.nodes, ...selection.segments].join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place is read from its top
  useEffect(() => {
    if (top.current?.parentElement) top.current.parentElement.scrollTop = 0;
  }, [place]);
  return (
    <div ref={top}>
      <Details selection={selection} />
    </div>
  );
}

function Details({ selection }: { selection: Selection }) {
  const [node] = selection.nodes;
  const [segment] = selection.segments;
  const count = itemsOf(selection).length;
  if (count === 0) return <SchemeDetails />;
  if (count > 1) return <ManySelected selection={selection} />;
  if (segment !== undefined) return <SegmentDetails key={segment} id={segment} />;
  if (node !== undefined) return <NodeDetails key={node} id={node} />;
  return null;
}

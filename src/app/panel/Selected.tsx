import { useEffect, useRef } from 'react';
import type { Selection } from '../../canvas/board.ts';
import { itemsOf, partOf, single } from '../../canvas/selection.ts';
import { useBoard } from '../context.ts';
import { ManySelected } from './ManySelected.tsx';
import { NodeDetails } from './NodeDetails.tsx';
import { DimensionDetails, NoteDetails, RoomDetails } from './RoomDetails.tsx';
import { SchemeDetails } from './SchemeDetails.tsx';
import { SegmentDetails } from './SegmentDetails.tsx';

/** What is selected on the sheets, with what can be changed about it. */
export function Selected() {
  const selection = useBoard((state) => state.selection);
  const top = useRef<HTMLDivElement>(null);
  const place = itemsOf(selection)
    .map(({ id }) => id)
    .join(' ');
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
  const item = single(selection);
  if (item?.kind === 'block' || item?.kind === 'exit')
    return <RoomDetails key={item.id} what={item.kind} id={item.id} />;
  if (item?.kind === 'part') return <SegmentDetails key={item.id} id={partOf(item.id).segment} />;
  if (item?.kind === 'note') return <NoteDetails key={item.id} id={item.id} />;
  if (item?.kind === 'dimension') return <DimensionDetails />;
  if (segment !== undefined) return <SegmentDetails key={segment} id={segment} />;
  if (node !== undefined) return <NodeDetails key={node} id={node} />;
  return null;
}

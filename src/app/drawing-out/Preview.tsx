import { useEffect, useRef } from 'react';
import { paintBoard } from '../../canvas/paint-board.ts';
import type { Board } from '../../files/drawing-out/layout.ts';
import { fontsFor, paintOf, type Wishes } from './make.ts';

interface PreviewProps {
  readonly board: Board;
  readonly wishes: Wishes;
  readonly label: string;
}

/** The drawing as it will be, as large as there is room for it. */
export function Preview({ board, wishes, label }: PreviewProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    let gone = false;
    const paint = async () => {
      await fontsFor(board);
      const element = canvas.current;
      const frame = element?.parentElement;
      const pen = element?.getContext('2d');
      if (gone || !element || !frame || !pen) return;
      const room = { width: frame.clientWidth - 16, height: frame.clientHeight - 16 };
      const perMm = Math.min(room.width / board.width, room.height / board.height);
      const sharp = Math.min(3, globalThis.devicePixelRatio || 1);
      element.width = Math.floor(board.width * perMm * sharp);
      element.height = Math.floor(board.height * perMm * sharp);
      element.style.width = `${board.width * perMm}px`;
      element.style.height = `${board.height * perMm}px`;
      for (const _ of paintBoard(pen, board, paintOf(wishes, perMm * sharp))) if (gone) return;
    };
    void paint();
    return () => {
      gone = true;
    };
  }, [board, wishes]);
  return (
    <div
      className={wishes.paper || wishes.format === 'dxf' ? 'drawing-preview' : 'drawing-preview see-through'}
    >
      <canvas ref={canvas} role="img" aria-label={label} />
    </div>
  );
}
